import { useCallback, useId, useLayoutEffect, useMemo, useSyncExternalStore, type ReactNode } from 'react'
import { createPortal } from 'react-dom'
import { say } from '@/app/_text'
import type { SiteMarkers } from './leaflet/site-markers'
import type { MapSite } from './map-types'
import { SiteFace } from './site-face'

const noFaces: ReadonlyMap<string, HTMLElement> = new Map()

/**
 * Puts the sites on the map.
 *
 * @returns their faces, to be rendered; a site on its way is moved without rendering
 */
export function useSites(markers: SiteMarkers | undefined, sites: readonly MapSite[]): ReactNode {
  const keysId = useId()
  const subscribe = useCallback((listener: () => void) => markers?.subscribe(listener) ?? (() => undefined), [markers])
  const faces = useSyncExternalStore(subscribe, () => markers?.faces() ?? noFaces, () => noFaces)

  useLayoutEffect(() => {
    if (!markers) return
    for (const site of markers.show(sites)) describe(markers.faces().get(site.id)?.closest('[data-site-id]'), site, keysId)
  }, [markers, sites, keysId])

  useLayoutEffect(() => markers?.thinNames(), [markers, faces, sites])

  // The same elements until sites come, go or change: what else the map shows is drawn without looking through them.
  return useMemo(() => (
    <>
      <p id={keysId} hidden>{say('map.site-keys')}</p>
      {sites.map((site) => {
        const face = faces.get(site.id)
        return face && createPortal(<SiteFace site={site} />, face, site.id)
      })}
    </>
  ), [faces, sites, keysId])
}

/** What the symbol is called, for who cannot see it. */
function describe(element: Element | null | undefined, { name, kind, note, isMovable, isChosen }: MapSite, keysId: string): void {
  if (!element) return
  const words = { name, kind: say(`map.kind.${kind}`) }
  element.setAttribute('aria-label', note ? say('map.site-noted', { ...words, note }) : say('map.site', words))
  element.setAttribute('aria-pressed', String(isChosen ?? false))
  if (isMovable) element.setAttribute('aria-describedby', keysId)
  else element.removeAttribute('aria-describedby')
}
