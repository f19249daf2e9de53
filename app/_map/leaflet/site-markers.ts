import L from 'leaflet'
import type { Point } from '@/lib/geo'
import type { MapSite } from '../map-types'
import { crowdedNames, nameBox, nameShift_px, symbolBox, type Box } from '../crowded-names'
import { hitCells, SAME_PLACE_PX } from '../hit-cells'
import { coveringsOf } from './coverings'
import { isNumbered, rankOf } from './site-rank'
import { findKeyStep } from '../key-step'
import { isSameSite } from '../same-site'
import { spreadMarks } from '../spread-marks'
import { NameSizes } from './name-sizes'

/** Edge of what a finger can hit, whatever the size of the symbol in it. */
const HIT_PX = 48
/** Sizes of the symbols as they are drawn; a tender's grows with what is written in it. */
const SYMBOL_PX = 28
const TENDER_PX = 28
const TENDER_HEIGHT_PX = 18
const LETTER_PX = 7
/** Pause after which a move by keys counts as made. */
const KEY_PAUSE_MS = 700

export type SiteEvents = {
  /** A site was tapped at a point, or chosen by key, which is at its own. */
  pick?(siteId: string, at: Point): void
  /** A finger or pointer is on a movable site, or it has the focus: it may be moved next. */
  grab?(siteId: string): void
  /** At most once a frame while a site is on its way. */
  drag?(siteId: string, point: Point): void
  /** The site has been put down. What it was moved to must be shown at once, or it goes back. */
  move?(siteId: string, point: Point): void
}

type Held = {
  marker: L.Marker
  face: HTMLElement
  /** What of the symbol's square a finger or pointer hits. */
  hit: HTMLElement
  site: MapSite
  isMoving: boolean
  /** Ends a move by keys that is under way. */
  endKeys: ((isKept: boolean) => void) | undefined
  cancelWait: (() => void) | undefined
}

/** The symbols on the map: each an element that can be focused, dragged, and moved by keys. */
export class SiteMarkers {
  readonly #map: L.Map
  readonly #held = new Map<string, Held>()
  readonly #listeners = new Set<() => void>()
  #faces: ReadonlyMap<string, HTMLElement> = new Map()
  #events: SiteEvents = {}
  #frame: number | undefined
  #isStill = false
  readonly #names = new NameSizes()
  #taken: readonly Box[] = []
  #whenTaken: (() => void) | undefined

  constructor(map: L.Map) {
    this.#map = map
    map.on('zoomend moveend resize', this.#thin)
    // What was measured in another typeface, before this one had come, holds no longer.
    document.fonts.addEventListener('loadingdone', this.#measureAnew)
  }

  setEvents(events: SiteEvents): void {
    this.#events = events
  }

  /** While something is placed no symbol moves: a tap with an unsteady finger would drag the one under it away. */
  holdStill(isStill: boolean): void {
    this.#isStill = isStill
    for (const held of this.#held.values()) this.#setMovable(held)
  }

  /** The element that each site's face is drawn into; the same map until sites come or go. */
  faces = (): ReadonlyMap<string, HTMLElement> => this.#faces

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /**
   * Makes the markers those of these sites.
   *
   * @returns those that are new or are not as they were
   */
  show(sites: readonly MapSite[]): readonly MapSite[] {
    const ids = new Set(sites.map(({ id }) => id))
    for (const [id, held] of this.#held) {
      if (ids.has(id)) continue
      held.marker.remove()
      this.#held.delete(id)
    }
    const changed = sites.filter((site) => this.#showOne(site))
    if (this.#faces.size === this.#held.size && [...this.#held.keys()].every((id) => this.#faces.has(id))) return changed
    this.#faces = new Map([...this.#held].map(([id, { face }]) => [id, face]))
    for (const listener of this.#listeners) listener()
    return changed
  }

  /** What symbols that stand still, their names and the buttons of the map take up, in pixels of the map's layers. */
  taken = (): readonly Box[] => this.#taken

  /** Tells when other names have been given room without the map having moved. */
  onTaken(listener: (() => void) | undefined): void {
    this.#whenTaken = listener
  }

  /** Hides names that have no room among the others; call when the faces have been drawn. */
  thinNames(): void {
    const before = JSON.stringify(this.#taken)
    this.#thin()
    if (JSON.stringify(this.#taken) !== before) this.#whenTaken?.()
  }

  #thin = (): void => {
    const order = [...this.#held.values()].sort((a, b) => rankOf(a.site) - rankOf(b.site))
    const shifts = this.#spread()
    const { x: mapWidth, y: mapHeight } = this.#map.getSize()
    const over = coveringsOf(this.#map)
    // All is measured before anything is written: else the browser would lay out the page anew for every name.
    const boxes = order.map(({ marker, face, site }) => {
      const at = this.#map.latLngToLayerPoint(marker.getLatLng())
      const [x, y] = [at.x + (shifts.get(site.id)?.x ?? 0), at.y + (shifts.get(site.id)?.y ?? 0)]
      const { width, height } = this.#names.sizeOf(site, face)
      const inMap = this.#map.latLngToContainerPoint(marker.getLatLng())
      const shift_px = nameShift_px(inMap.x, width, mapWidth)
      const isOff = inMap.x < 0 || inMap.x > mapWidth || inMap.y < 0 || inMap.y > mapHeight
      return { isOff, x, y, width: isNumbered(site) ? 0 : width, height: isNumbered(site) ? 0 : height, isAlwaysShown: site.isChosen ?? false, shift_px }
    })
    const isCrowded = crowdedNames(boxes, over)
    const cells = hitCells(boxes, HIT_PX)
    this.#taken = [...over, ...boxes.flatMap((box, i) => (order[i]!.site.kind === 'tender' ? [] : isCrowded[i] ? [symbolBox(box)] : [symbolBox(box), nameBox(box)]))]
    order.forEach(({ marker, face, hit, site }, i) => {
      const shift = shifts.get(site.id)
      if (shift) face.style.translate = hit.style.translate = `${shift.x}px ${shift.y}px`
      hit.style.clipPath = cells[i] ? `polygon(${cells[i].map(({ x, y }) => `${x.toFixed(1)}px ${y.toFixed(1)}px`).join(', ')})` : ''
      const nameShift = `${boxes[i]?.shift_px ?? 0}px`
      if ((face.style.getPropertyValue('--name-shift') || '0px') !== nameShift) face.style.setProperty('--name-shift', nameShift)
      marker.getElement()?.toggleAttribute('data-crowded', (isCrowded[i] ?? false) || boxes[i]!.isOff || isNumbered(site))
    })
  }

  readonly #measureAnew = (): void => {
    this.#names.forget()
    this.thinNames()
  }

  /** Vehicles that stand at one place are lined up round it, so that each can be read. */
  #spread(): Map<string, { x: number; y: number }> {
    const spotOf = ({ marker, site }: Held) => ({ ...this.#map.latLngToLayerPoint(marker.getLatLng()), width: site.kind === 'tender' ? TENDER_PX + LETTER_PX * Math.max(0, (site.letter?.length ?? 0) - 2) : SYMBOL_PX, height: site.kind === 'tender' ? TENDER_HEIGHT_PX : SYMBOL_PX })
    const all = [...this.#held.values()]
    const tenders = all.filter(({ site }) => site.kind === 'tender')
    if (tenders.length === 0) return new Map()
    const shifts = spreadMarks(tenders.map(spotOf), all.filter(({ site }) => site.kind !== 'tender').map(spotOf))
    return new Map(tenders.map(({ site }, k) => [site.id, shifts[k]!]))
  }

  remove(): void {
    this.#map.off('zoomend moveend resize', this.#thin)
    document.fonts.removeEventListener('loadingdone', this.#measureAnew)
    if (this.#frame !== undefined) cancelAnimationFrame(this.#frame)
    for (const { marker, cancelWait } of this.#held.values()) {
      cancelWait?.()
      marker.remove()
    }
    this.#held.clear()
  }

  #showOne(site: MapSite): boolean {
    const there = this.#held.get(site.id)
    const isSame = there !== undefined && isSameSite(there.site, site)
    const held = there ?? this.#add(site)
    held.site = site
    // One that was put down elsewhere goes back, though nothing has become of it.
    if (!held.isMoving && !isAt(held.marker, site.point)) held.marker.setLatLng([site.point.lat, site.point.lon])
    if (isSame) return false
    held.marker.setZIndexOffset(site.isChosen ? 2000 : site.kind === 'roadNote' ? -2000 : site.isGhost ? -1000 : site.kind === 'hazard' ? -300 : 0)
    this.#setMovable(held)
    return true
  }

  #setMovable({ marker, site }: Held): void {
    if (site.isMovable && !this.#isStill) marker.dragging?.enable()
    else marker.dragging?.disable()
  }

  #add(site: MapSite): Held {
    const body = document.createElement('div'), hit = document.createElement('div'), face = document.createElement('div')
    hit.setAttribute('data-hit', '')
    body.append(hit, face)
    const icon = L.divIcon({ html: body, className: '', iconSize: [HIT_PX, HIT_PX], iconAnchor: [HIT_PX / 2, HIT_PX / 2] })
    const marker = L.marker([site.point.lat, site.point.lon], { icon, keyboard: true, draggable: site.isMovable ?? false, autoPan: true, autoPanPadding: [48, 48], bubblingMouseEvents: false })
    const held: Held = { marker, face, hit, site, isMoving: false, endKeys: undefined, cancelWait: undefined }
    const { id } = site
    marker.on('click', ({ originalEvent }: L.LeafletMouseEvent) => this.#events.pick?.(this.#next(held), this.#tapped(originalEvent) ?? pointOf(marker)))
    marker.on('dragstart', () => {
      held.endKeys?.(true)
      held.isMoving = true
    })
    marker.on('drag', () => this.#dragSoon(held))
    marker.on('dragend', () => this.#put(held))
    marker.addTo(this.#map)
    const element = marker.getElement()
    element?.setAttribute('data-site-id', id)
    element?.addEventListener('keydown', (event) => this.#key(held, event))
    for (const sign of ['pointerdown', 'focus'] as const) element?.addEventListener(sign, () => held.site.isMovable && this.#events.grab?.(id))
    element?.addEventListener('blur', () => held.endKeys?.(true))
    this.#held.set(id, held)
    return held
  }

  /** Of sites at one place, a tap on the chosen one takes the next: else those beneath would be out of reach. */
  #next({ marker, site }: Held): string {
    if (!site.isChosen) return site.id
    const at = this.#map.latLngToLayerPoint(marker.getLatLng())
    const here = [...this.#held.values()].filter((other) => this.#map.latLngToLayerPoint(other.marker.getLatLng()).distanceTo(at) < SAME_PLACE_PX)
    return here[(here.findIndex((other) => other.site === site) + 1) % here.length]?.site.id ?? site.id
  }

  /** Where on the ground a tap was; undefined for a click that no pointer made. */
  #tapped(event: MouseEvent | undefined): Point | undefined {
    if (!event || event.detail === 0) return undefined
    const { lat, lng } = this.#map.mouseEventToLatLng(event)
    return { lat, lon: lng }
  }

  #dragSoon(held: Held): void {
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = undefined
      if (held.isMoving) this.#events.drag?.(held.site.id, pointOf(held.marker))
    })
  }

  #put(held: Held): void {
    held.isMoving = false
    this.#events.move?.(held.site.id, pointOf(held.marker))
    // Whoever was told has shown the new place by now, or would not have it.
    setTimeout(() => {
      if (!held.isMoving) held.marker.setLatLng([held.site.point.lat, held.site.point.lon])
    }, 0)
  }

  #key(held: Held, event: KeyboardEvent): void {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      event.stopPropagation()
      if (held.endKeys) held.endKeys(true)
      else this.#events.pick?.(held.site.id, pointOf(held.marker))
      return
    }
    if (event.key === 'Escape' && held.endKeys) {
      event.stopPropagation()
      held.endKeys(false)
      return
    }
    const step = held.site.isMovable && !this.#isStill ? findKeyStep(event) : undefined
    if (!step) return
    event.preventDefault()
    event.stopPropagation()
    held.isMoving = true
    const at = this.#map.latLngToContainerPoint(held.marker.getLatLng()).add(step)
    held.marker.setLatLng(this.#map.containerPointToLatLng(at))
    this.#map.panInside(held.marker.getLatLng(), { padding: [48, 48], animate: false })
    this.#dragSoon(held)
    this.#endKeysLater(held)
  }

  /** The move by keys is made when no further key comes for a while, or the symbol loses the focus. */
  #endKeysLater(held: Held): void {
    held.cancelWait?.()
    held.endKeys = (isKept) => {
      held.cancelWait?.()
      held.cancelWait = held.endKeys = undefined
      if (isKept) return this.#put(held)
      held.isMoving = false
      held.marker.setLatLng([held.site.point.lat, held.site.point.lon])
      this.#events.drag?.(held.site.id, held.site.point)
    }
    const timer = setTimeout(() => held.endKeys?.(true), KEY_PAUSE_MS)
    held.cancelWait = () => clearTimeout(timer)
  }
}

const isAt = (marker: L.Marker, { lat, lon }: Point): boolean => marker.getLatLng().lat === lat && marker.getLatLng().lng === lon

const pointOf = (marker: L.Marker): Point => {
  const { lat, lng } = marker.getLatLng()
  return { lat, lon: lng }
}
