import type L from 'leaflet'
import { useEffect, useState } from 'react'
import type { SiteKind } from '@/app/_look/site-shapes'
import { formatQuantity, say } from '@/app/_text'
import type { Point } from '@/lib/geo'
import { feetFromMetres } from '@/lib/units'
import { Button } from '../_ui/button'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import { MapKey } from './map-key'
import type { MapRoute, MapSite } from './map-types'
import { useDevicePlace } from './use-device-place'
import { usePointWords } from './use-point-words'
import styles from './map.module.css'

type Props = {
  map: L.Map
  pending?: SiteKind
  pendingWords?: string
  onStopPlacing?(): void
  sites: readonly MapSite[]
  routes: readonly MapRoute[]
  /** Nothing is drawn but a grid. */
  isBare: boolean
  attribution?: readonly string[]
  /** Whether the lie of the ground is drawn; absent where there is nothing to draw. */
  isGroundShown?: boolean
  onGround?(isShown: boolean): void
  onFit(): void
  onLocate?(point: Point, accuracy_m: number): void
  pointWords?(point: Point): string
}

/** What lies over the map: zoom, showing everything, where this device is, and what the next tap does. */
export function MapControls({ map, pending, pendingWords, onStopPlacing, sites, routes, isBare, attribution = [], isGroundShown = false, onGround, onFit, onLocate, pointWords }: Props) {
  const [system] = useUnitSystem()
  const zoom = useZoom(map)
  const { canLocate, state, locate, dismiss } = useDevicePlace(map, onLocate)
  const words = usePointWords(map, pointWords)
  return (
    <>
      <div className={styles.top}>
        {/* While something is placed the room is for the tap. */}
        {isBare && !pending && <p className={styles.sentence}>{say('map.no-data')}</p>}
        {pending && (
          <p className={joinClasses(styles.sentence, styles.asking)} role="status">
            <span>{pendingWords ?? say('map.place-here', { kind: say(`map.kind.${pending}`) })} <span className={styles.keysOnly}>{say('map.place-keys')}</span></span>{' '}
            {onStopPlacing && <Button size="s" icon="close" label={say('map.stop-placing')} onClick={onStopPlacing} />}
          </p>
        )}
        {state.kind === 'failed' && (
          <p className={styles.sentence} role="alert">
            {say(`map.locate-${state.why}`)} <Button label={say('kit.close')} look="quiet" size="s" onClick={dismiss} />
          </p>
        )}
        {state.kind === 'found' && (
          <p className={styles.sentence} role="status">
            {say('map.located', { accuracy: formatQuantity(feetFromMetres(state.accuracy_m), 'ft', system) })}{' '}
            <Button label={say('kit.close')} look="quiet" size="s" onClick={dismiss} />
          </p>
        )}
      </div>
      <div className={styles.zoom} data-over-map>
        <button type="button" aria-label={say('map.zoom-in')} title={say('map.zoom-in')} disabled={zoom >= map.getMaxZoom()} onClick={() => map.zoomIn()}>
          <Stroke path="M10 4v12M4 10h12" />
        </button>
        <button type="button" aria-label={say('map.zoom-out')} title={say('map.zoom-out')} disabled={zoom <= map.getMinZoom()} onClick={() => map.zoomOut()}>
          <Stroke path="M4 10h12" />
        </button>
      </div>
      <div className={styles.foot}>
        <div className={styles.actions} data-over-map>
          {canLocate && <Button label={say(state.kind === 'asking' ? 'map.locating' : 'map.locate')} disabled={state.kind === 'asking'} onClick={locate} />}
          {onGround && <Button label={say('map.ground')} aria-pressed={isGroundShown} {...(isGroundShown && { icon: 'check' as const })} onClick={() => { onGround(!isGroundShown) }} />}
          <MapKey sites={sites} routes={routes} />
          <Button label={say('map.fit')} onClick={onFit} />
        </div>
        {attribution.length > 0 && <p className={styles.attribution} data-over-map>{say('map.attribution', { sources: attribution.join('; ') })}</p>}
      </div>
      {pointWords && <output className={styles.point} ref={words} />}
    </>
  )
}

const Stroke = ({ path }: { path: string }) => (
  <svg width={20} height={20} viewBox="0 0 20 20" fill="none" stroke="currentColor" strokeWidth={2} strokeLinecap="round" aria-hidden="true">
    <path d={path} />
  </svg>
)

function useZoom(map: L.Map): number {
  const [zoom, setZoom] = useState(() => map.getZoom())
  useEffect(() => {
    const read = () => setZoom(map.getZoom())
    read()
    map.on('zoomend', read)
    return () => void map.off('zoomend', read)
  }, [map])
  return zoom
}
