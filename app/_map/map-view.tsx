'use client'

import 'leaflet/dist/leaflet.css'
import L from 'leaflet'
import { useCallback, useEffect, useImperativeHandle, useRef, useState, type Ref } from 'react'
import type { SiteKind } from '@/app/_look/site-shapes'
import { say } from '@/app/_text'
import { findBounds, type Bounds, type Point } from '@/lib/geo'
import type { TerrainSet } from '@/lib/plan'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import { FINEST_ZOOM, type DrawnDistrict } from './drawn-district'
import { MapControls } from './map-controls'
import { ScaleBar } from './leaflet/scale-bar'
import { SiteMarkers } from './leaflet/site-markers'
import styles from './map.module.css'
import type { MapHandle, MapRoute, MapSite } from './map-types'
import { useDistrictLayers } from './use-district-layers'
import { useDrawnGround } from './use-drawn-ground'
import { useGroundShown } from './use-ground-shown'
import { useRoutes } from './use-routes'
import { useSites } from './use-sites'
import { allBounds, openingBounds } from './where-to-look'

export type MapViewProps = {
  /** The drawn district; absent: a bare grid, with a sentence why. */
  district?: DrawnDistrict
  /** True while the district is on its way: then nothing is said about it being absent. */
  isLoading?: boolean
  /** The district's elevation: the lie of its ground is drawn under the roads. */
  terrain?: TerrainSet
  /** Where the map data comes from, as its licence asks; always in sight. */
  attribution?: readonly string[]
  /** What the page is about, to look at first, with the ways there; else all sites, else the district. */
  home?: Bounds
  /** Where to look while there is neither a site nor a map. */
  start?: Bounds | undefined
  sites?: readonly MapSite[]
  routes?: readonly MapRoute[]
  /** The kind of site that the next click or tap places. */
  pending?: SiteKind
  /** What that tap does, in place of the words for the kind. */
  pendingWords?: string
  /** @param onSiteId the site whose symbol was tapped, where the tap was on one */
  onPlace?(point: Point, onSiteId?: string): void
  /** Gives up placing. Its button lies over the map, where nothing has to make room for it. */
  onStopPlacing?(): void
  onPick?(siteId: string): void
  /** A click where no site is, while none is pending. */
  onPickGround?(point: Point): void
  onLongPress?(point: Point): void
  /** A movable site may be moved next: time to make ready for it. */
  onGrab?(siteId: string): void
  /** At most once a frame while a site is on its way. */
  onDrag?(siteId: string, point: Point): void
  /** A site has been put down. Show it there at once, or it goes back. */
  onMove?(siteId: string, point: Point): void
  /** Where this device is, when the user has asked for it. */
  onLocate?(point: Point, accuracy_m: number): void
  /** Words for a point under the pointer, when they are wanted. */
  pointWords?(point: Point): string
  className?: string
  ref?: Ref<MapHandle>
}

/** The district map. Runs only in a browser: use `DistrictMap`. */
export default function MapView(props: MapViewProps) {
  const { district, isLoading, home, start, sites = [], routes = [], pending, className, ref } = props
  const holder = useRef<HTMLDivElement>(null)
  const [stage, setStage] = useState<{ map: L.Map; markers: SiteMarkers }>()
  const { map, markers } = stage ?? {}
  const latest = useRef(props)
  const isTouched = useRef(false)
  const touch = () => { isTouched.current = true }
  useEffect(() => {
    latest.current = props
  })

  useEffect(() => {
    if (!holder.current) return
    const made = L.map(holder.current, { zoomControl: false, attributionControl: false, minZoom: 5, maxZoom: FINEST_ZOOM, zoomDelta: 1, wheelPxPerZoomLevel: 90, fadeAnimation: false })
    new ScaleBar().addTo(made)
    lookAt(made, openingBounds(latest.current))
    made.on('click', ({ latlng }: L.LeafletMouseEvent) => {
      const { pending: kind, onPlace, onPickGround } = latest.current
      if (kind) onPlace?.(pointOf(latlng))
      else onPickGround?.(pointOf(latlng))
    })
    made.on('contextmenu', ({ latlng, originalEvent }: L.LeafletMouseEvent) => {
      originalEvent.preventDefault()
      latest.current.onLongPress?.(pointOf(latlng))
    })
    const observer = new ResizeObserver(() => {
      made.invalidateSize({ pan: false })
      // Until somebody has had a hand on it, the map shows the whole of what it is about, whatever room it gets.
      if (!isTouched.current) lookAt(made, openingBounds(latest.current))
    })
    observer.observe(holder.current)
    const symbols = new SiteMarkers(made)
    symbols.setEvents({
      pick: (id, at) => {
        const { pending: kind, onPlace, onPick } = latest.current
        if (kind) onPlace?.(at, id)
        else onPick?.(id)
      },
      grab: (id) => latest.current.onGrab?.(id),
      drag: (id, point) => latest.current.onDrag?.(id, point),
      move: (id, point) => latest.current.onMove?.(id, point),
    })
    setStage({ map: made, markers: symbols })
    return () => {
      observer.disconnect()
      symbols.remove()
      made.remove()
      setStage(undefined)
    }
  }, [])

  const [system] = useUnitSystem()
  const [isGroundShown, showGround] = useGroundShown()
  const ground = useDrawnGround(district && props.terrain, system)
  useDistrictLayers(map, markers, district, isGroundShown ? ground : undefined)
  const drawRoutes = useRoutes(map, routes)
  const faces = useSites(markers, sites)
  const isPlacing = pending !== undefined
  useEffect(() => markers?.holdStill(isPlacing), [markers, isPlacing])
  // Whoever places by keys is at the map at once, and afterwards where they came from.
  useEffect(() => {
    const map = holder.current, before = document.activeElement
    if (!isPlacing || !map) return
    map.focus({ preventScroll: true })
    return () => { if (document.activeElement === map && before instanceof HTMLElement) before.focus({ preventScroll: true }) }
  }, [isPlacing])

  const fit = useCallback(() => {
    isTouched.current = true
    if (map) lookAt(map, allBounds(latest.current))
  }, [map])
  const lookedAt = useRef<{ map: L.Map; hasRoutes: boolean }>(undefined)
  const hasRoutes = routes.length > 0
  useEffect(() => {
    const bounds = openingBounds({ ...(district && { district }), ...(home && { home }), start, sites, routes })
    const looked = lookedAt.current
    // Ways are found after the sites: once more when they are there.
    if (!map || !bounds || (looked?.map === map && (isTouched.current || looked.hasRoutes || !hasRoutes))) return
    lookedAt.current = { map, hasRoutes }
    lookAt(map, bounds)
  }, [map, district, home, start, sites, routes, hasRoutes])

  useImperativeHandle(ref, (): MapHandle => ({
    fitTo: (target) => {
      isTouched.current = true
      if (map) lookAt(map, 'south' in target ? target : findBounds(target))
    },
    centreOn: ({ lat, lon }) => {
      isTouched.current = true
      map?.panTo([lat, lon])
    },
    drawRoutes,
    centre: () => (map ? pointOf(map.getCenter()) : { lat: 0, lon: 0 }),
  }), [map, drawRoutes])

  return (
    <div className={joinClasses(styles.frame, className)} onPointerDownCapture={touch} onWheelCapture={touch} onKeyDownCapture={touch}>
      <div
        ref={holder}
        className={joinClasses(styles.map, pending && styles.placing)}
        role="region"
        aria-label={say('map.label')}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || event.target !== holder.current || !map || !pending) return
          event.preventDefault()
          props.onPlace?.(pointOf(map.getCenter()))
        }}
      />
      {faces}
      {pending && <div className={styles.cross} aria-hidden="true" />}
      {map && <MapControls map={map} onFit={fit} isBare={!district && !isLoading} {...(ground && { isGroundShown, onGround: showGround })} {...props} sites={sites} routes={routes} attribution={attributionOf(props, isGroundShown && ground !== undefined)} />}
    </div>
  )
}

/** What is named at the foot of the map: whose data is drawn. */
const attributionOf = ({ attribution = [], terrain }: MapViewProps, isGroundDrawn: boolean): readonly string[] =>
  isGroundDrawn && terrain?.attribution && !attribution.includes(terrain.attribution) ? [...attribution, terrain.attribution] : attribution

const pointOf = ({ lat, lng }: L.LatLng): Point => ({ lat, lon: lng })

/** With nothing known the bare grid is as wide as a district: what is tapped on it lies as far apart as it does there. */
const NOWHERE_ZOOM = 14

function lookAt(map: L.Map, bounds: Bounds | undefined): void {
  if (!bounds) {
    map.setView([0, 0], NOWHERE_ZOOM, { animate: false })
    return
  }
  const { south, west, north, east } = bounds
  // Room for symbols and their names, and for the buttons where they lie over the map; less of it where the map is small.
  const side = Math.min(56, map.getSize().x * 0.08)
  const foot = (map.getContainer().parentElement?.clientHeight ?? 0) > map.getSize().y + 8 ? 24 : 56
  map.fitBounds([[south, west], [north, east]], { paddingTopLeft: [side, side], paddingBottomRight: [side, side + foot], maxZoom: 16, animate: false })
}
