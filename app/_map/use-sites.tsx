import type L from 'leaflet'
import { useEffect, useId, useLayoutEffect, useState, type ReactNode, type RefObject } from 'react'
import { createPortal } from 'react-dom'
import { say } from '@/app/_text'
import { SiteMarkers, type SiteEvents } from './leaflet/site-markers'
import type { MapSite } from './map-types'
import { SiteFace } from './site-face'

type Latest = RefObject<{ onPick?: SiteEvents['pick']; onGrab?: SiteEvents['grab']; onDrag?: SiteEvents['drag']; onMove?: SiteEvents['move'] }>

/**
 * Puts the sites on the map.
 *
 * @returns their faces, to be rendered; a site on its way is moved without rendering
 */
export function useSites(map: L.Map | undefined, sites: readonly MapSite[], latest: Latest): ReactNode {
  const keysId = useId()
  const [markers, setMarkers] = useState<SiteMarkers>()
  const [faces, setFaces] = useState<ReadonlyMap<string, HTMLElement>>(new Map())

  useEffect(() => {
    if (!map) return
    const made = new SiteMarkers(map)
    made.setEvents({
      pick: (id) => latest.current.onPick?.(id),
      grab: (id) => latest.current.onGrab?.(id),
      drag: (id, point) => latest.current.onDrag?.(id, point),
      move: (id, point) => latest.current.onMove?.(id, point),
    })
    setMarkers(made)
    return () => {
      made.remove()
      setMarkers(undefined)
      setFaces(new Map())
    }
  }, [map, latest])

  useLayoutEffect(() => {
    if (!markers) return
    const next = markers.show(sites)
    setFaces((before) => (before.size === next.size && [...next].every(([id, face]) => before.get(id) === face) ? before : next))
    for (const site of sites) describe(next.get(site.id)?.closest('[data-site-id]'), site, keysId)
  }, [markers, sites, keysId])

  useLayoutEffect(() => markers?.thinNames(), [markers, faces, sites])

  return (
    <>
      <p id={keysId} hidden>{say('map.site-keys')}</p>
      {sites.map((site) => {
        const face = faces.get(site.id)
        return face && createPortal(<SiteFace site={site} />, face, site.id)
      })}
    </>
  )
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
