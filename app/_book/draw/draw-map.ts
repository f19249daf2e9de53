import { boxAround, clipLine, drawnMap, fitView, groundOf, hatchLines, placeLabels, placesBeside, spotOf, thinned, type Box, type DrawnMap, type LabelWish, type PaperView } from '@/lib/book'
import { isInside, type Point } from '@/lib/geo'
import type { DistrictMap, RoadLayer } from '@/lib/osm'
import type { SiteKind } from '@/app/_look/site-shapes'
import type { UnitSystem } from '@/app/_text'
import { LEADING, wrap, type Measure } from '../page/measure'
import { pathOf, type Page } from '../page/page'
import { drawRoutes, type MapWay } from './draw-ways'
import { drawNorth, drawScaleBar, scaleBar } from './scale-bar'
import { drawSymbol } from './symbol'

export type MapPlace = { readonly kind: SiteKind; readonly point: Point; readonly name: string; readonly letter?: string; /** Where the view need not reach: drawn small, named last. */ readonly isMinor?: boolean }

export type MapAsk = {
  readonly map?: Pick<DistrictMap, 'features'> | undefined
  readonly box: Box
  readonly places: readonly MapPlace[]
  readonly ways?: readonly MapWay[]
  readonly leastAcross_m?: number
  /** Only the places are kept in sight, ways may run out of it. */
  readonly isClose?: boolean
  /** Of the places that are not minor. */
  readonly symbolSize?: number
  readonly system: UnitSystem
}

const roadWidths: Readonly<Record<RoadLayer, readonly [near: number, far: number]>> = {
  majorRoad: [5, 2.4], mainRoad: [4.4, 2], minorRoad: [3.6, 1.5], localRoad: [2.8, 0.9], serviceRoad: [1.4, 0.5], track: [0.9, 0.6],
}
const streamWidths: Readonly<Record<string, number>> = { river: 1.8, canal: 1.5 }
const HATCH = 3
const SYMBOL = 17
const MINOR_SYMBOL = 11
const ROOM = 44
/** Kept free along a way, and how far apart that is looked at. */
const LINE_ROOM = 8
const LINE_STEP = 6
/** A name further than this from its symbol has a line to it. */
const LEADER_FROM = 8

/** Closer than so many metres a point roads are drawn at their widest. */
const NEAR_M = 1.5
const FAR_M = 16

/** What a map of this size shows of the ground. */
export function mapView({ box, places, ways = [], leastAcross_m, isClose = false }: Pick<MapAsk, 'box' | 'places' | 'ways' | 'leastAcross_m' | 'isClose'>): PaperView {
  const main = places.filter(({ isMinor }) => !isMinor).map(({ point }) => point)
  const reach = isClose ? main : [...main, ...ways.filter(({ look }) => look !== 'approach').flatMap(({ path }) => path)]
  return fitView(reach, box, { room: Math.min(ROOM, (box.bottom - box.top) / 4), ...(leastAcross_m !== undefined && { leastAcross_m }) })
}

/** A part of the district with the sites and ways of a sheet on it, all of it lines and text. @returns the view, by which more may be drawn */
export function drawMap(page: Page, measure: Measure, ask: MapAsk): PaperView {
  const { map, box, places, ways = [], symbolSize = SYMBOL, system } = ask
  const main = places.filter(({ isMinor }) => !isMinor)
  const view = mapView(ask)
  page.rect(box, { fill: 'paper' })
  const drawn = map ? drawnMap(map, view) : undefined
  if (drawn) drawGround(page, drawn, view)
  drawRoutes(page, ways, view)

  const ground = groundOf(view)
  const shown = [...main, ...places.filter(({ isMinor, point }) => isMinor && isInside(ground, point))]
  const spots = shown.map((place) => ({ place, spot: spotOf(view, place.point), size: place.isMinor ? MINOR_SYMBOL : symbolSize }))
    .filter(({ spot: { x, y }, size }) => x - size / 2 > box.left + 2 && x + size / 2 < box.right - 2 && y - size / 2 > box.top + 2 && y + size / 2 < box.bottom - 2)
  const moved = apart(spots.map(({ spot, size }) => ({ ...spot, size })), box)
  moved.forEach(({ x, y }, i) => {
    const one = spots[i]
    if (!one) return
    if (Math.hypot(x - one.spot.x, y - one.spot.y) > 2) page.shape(pathOf([one.spot.x, one.spot.y, x, y]), { stroke: 'ink', width: 0.7 })
  })
  spots.toReversed().forEach(({ place }, back) => {
    const i = spots.length - 1 - back
    const at = moved[i]
    if (at) drawSymbol(page, place.kind, at.x, at.y, at.size, place.letter)
  })

  const corner = { left: box.left, top: box.bottom - 36, right: box.left + 150, bottom: box.bottom }
  const taken = [corner, ...moved.map(({ x, y, size }) => boxAround({ x, y }, size + 1, size + 1))]
  drawLabels(page, measure, box, taken, lineRooms(ways, view), spots.map(({ place, size }, i) => ({ place, size, spot: moved[i] ?? { x: 0, y: 0 } })), drawn)

  page.rect({ left: box.left, top: corner.top + 6, right: box.left + 146, bottom: box.bottom }, { fill: 'paper', opacity: 0.86 })
  drawNorth(page, box.left + 13, box.bottom - 9, 0)
  drawScaleBar(page, scaleBar(view.metresPerPoint, 78, system), box.left + 26, box.bottom - 13)
  page.rect(box, { stroke: 'ink', width: 1 })
  return view
}

function drawGround(page: Page, { waters, buildings, streams, roads }: DrawnMap, { metresPerPoint }: PaperView): void {
  for (const kind of new Set(streams.map((stream) => stream.kind)))
    page.shape(streams.filter((stream) => stream.kind === kind).map(({ line }) => pathOf(line)).join(''), { stroke: 'water', width: streamWidths[kind] ?? 0.8, isRound: true })
  for (const { rings, shores } of waters) {
    page.shape(rings.map((ring) => pathOf(ring, true)).join(''), { fill: 'waterSoft' })
    page.shape(hatchLines(rings, HATCH).map((line) => pathOf(line)).join(''), { stroke: 'water', width: 0.25 })
    page.shape(shores.map((line) => pathOf(line)).join(''), { stroke: 'water', width: 0.7, isRound: true })
  }
  page.shape(buildings.flatMap(({ rings }) => rings.map((ring) => pathOf(ring, true))).join(''), { fill: 'building', stroke: 'casing', width: 0.3 })
  const nearShare = Math.min(1, Math.max(0, Math.log(FAR_M / metresPerPoint) / Math.log(FAR_M / NEAR_M)))
  const widthOf = (layer: RoadLayer) => { const [near, far] = roadWidths[layer]; return far + (near - far) * nearShare }
  const layers = [...new Set(roads.map(({ layer }) => layer))]
  const pathsOf = (layer: RoadLayer) => roads.filter((road) => road.layer === layer).map(({ line }) => pathOf(line)).join('')
  for (const layer of layers) if (layer !== 'track') page.shape(pathsOf(layer), { stroke: 'casing', width: widthOf(layer) + 0.9, isRound: true })
  for (const layer of layers) {
    if (layer === 'track') page.shape(pathsOf(layer), { stroke: 'casing', width: widthOf(layer), dash: [3, 2] })
    else page.shape(pathsOf(layer), { stroke: 'paper', width: widthOf(layer), isRound: true })
  }
}

/** Moves symbols that would hide each other apart, the first staying where it is. */
function apart(spots: readonly { readonly x: number; readonly y: number; readonly size: number }[], box: Box): { x: number; y: number; size: number }[] {
  const set: { x: number; y: number; size: number }[] = []
  for (const { x, y, size } of spots) {
    const isFree = (at: { x: number; y: number }) => set.every((other) => Math.hypot(other.x - at.x, other.y - at.y) >= (other.size + size) / 2 + 1)
      && at.x - size / 2 > box.left + 1 && at.x + size / 2 < box.right - 1 && at.y - size / 2 > box.top + 1 && at.y + size / 2 < box.bottom - 1
    let found = { x, y }
    for (let ring = 1; !isFree(found) && ring < 8; ring++) {
      for (let step = 0; step < 12 && !isFree(found); step++) {
        const angle = (step / 12) * 2 * Math.PI
        found = { x: x + Math.cos(angle) * ring * size * 0.6, y: y + Math.sin(angle) * ring * size * 0.6 }
      }
    }
    set.push({ ...found, size })
  }
  return set
}

/** Labels keep off the ways that tenders drive. */
const lineRooms = (ways: readonly MapWay[], view: PaperView): Box[] =>
  ways.filter(({ look }) => look !== 'approach').flatMap(({ path }) =>
    clipLine(thinned(path.flatMap((point) => { const { x, y } = spotOf(view, point); return [x, y] }), 2), view.box).flatMap((line) => {
      const rooms: Box[] = []
      for (let i = 0; i + 3 < line.length; i += 2) {
        const [ax = 0, ay = 0, bx = 0, by = 0] = line.slice(i, i + 4)
        const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / LINE_STEP))
        for (let n = 0; n <= steps; n++) rooms.push(boxAround({ x: ax + ((bx - ax) * n) / steps, y: ay + ((by - ay) * n) / steps }, LINE_ROOM, LINE_ROOM))
      }
      return rooms
    }))

type Label = { readonly lines: readonly string[]; readonly size: number; readonly isBold: boolean; readonly ink: 'ink' | 'quiet' | 'water'; readonly across: number; readonly down: number }

function drawLabels(page: Page, measure: Measure, box: Box, taken: readonly Box[], lines: readonly Box[], places: readonly { place: MapPlace; spot: { x: number; y: number }; size: number }[], drawn: DrawnMap | undefined): void {
  const label = (text: string, size: number, isBold: boolean, ink: Label['ink'], most: number): Label => {
    const lines = wrap(measure, text, most, size, isBold ? 'bold' : 'regular')
    return { lines, size, isBold, ink, across: Math.max(...lines.map((line) => measure.across(line, size, isBold ? 'bold' : 'regular'))) + 4, down: lines.length * size * LEADING + 1 }
  }
  const ofPlaces = places.map(({ place, spot, size }): LabelWish<Label> => {
    const what = label(place.name, place.isMinor ? 7 : 8.5, !place.isMinor, 'ink', place.isMinor ? 90 : 120)
    return { what, across: what.across, down: what.down, places: placesBeside(spot, size / 2, what.across, what.down) }
  })
  const ofGround = (drawn?.names ?? []).map(({ text, kind, rank, places: at }): LabelWish<Label> => {
    const isTown = kind === 'place' && rank < 3
    const what = kind === 'road' ? label(text, 6.8, false, 'quiet', 1000) : label(text, isTown ? 9 : 7.4, isTown, kind === 'water' ? 'water' : 'quiet', 110)
    return { what, across: what.across, down: what.down, places: kind === 'road' || at.some(({ angle }) => angle !== 0) ? at.filter(({ length }) => length * 1.1 > what.across) : at }
  })
  const frame = { left: box.left + 2, top: box.top + 2, right: box.right - 2, bottom: box.bottom - 2 }
  const wishOf = new Map(ofPlaces.map((wish) => [wish.what, wish]))
  const own = placeLabels(ofPlaces.filter((_, i) => !places[i]?.place.isMinor), frame, [...taken, ...lines])
  // Every place of the sheet has its name, over a way where there is no other room.
  const forced = placeLabels(own.left.flatMap((what) => wishOf.get(what) ?? []), frame, [...taken, ...own.placed.map((one) => one.box)])
  const others = placeLabels([...ofPlaces.filter((_, i) => places[i]?.place.isMinor), ...ofGround], frame, [...taken, ...lines, ...own.placed.map((one) => one.box), ...forced.placed.map((one) => one.box)])
  const placeOf = new Map(ofPlaces.map((wish, i) => [wish.what, places[i]]))
  const all = [...own.placed, ...forced.placed, ...others.placed]
  for (const { what, box: text } of all) {
    const place = placeOf.get(what)
    if (place) drawLeader(page, place.spot, place.size / 2, text)
  }
  for (const { what, x, y, angle } of all) {
    const { lines, size, isBold, ink, across, down } = what
    const look = { size, weight: isBold ? 'bold' as const : 'regular' as const, ink }
    page.shape(turnedRect(x, y, across - 1, down - 1.5, angle), { fill: 'paper', opacity: 0.82 })
    if (angle !== 0) page.turned(lines[0] ?? '', x, y, angle, look)
    else lines.forEach((line, i) => { page.line(line, x, y - down / 2 + i * size * LEADING + 0.5, look, 'middle') })
  }
}

/** From a symbol to a name that stands away from it, so that nobody takes it for another's. */
function drawLeader(page: Page, { x, y }: { readonly x: number; readonly y: number }, radius: number, { left, top, right, bottom }: Box): void {
  const to = { x: Math.min(Math.max(x, left), right), y: Math.min(Math.max(y, top), bottom) }
  const length = Math.hypot(to.x - x, to.y - y)
  if (length < radius + LEADER_FROM) return
  const share = radius / length
  page.shape(pathOf([x + (to.x - x) * share, y + (to.y - y) * share, to.x, to.y]), { stroke: 'ink', width: 0.6 })
}

function turnedRect(x: number, y: number, across: number, down: number, angle: number): string {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return pathOf([[-1, -1], [1, -1], [1, 1], [-1, 1]].flatMap(([i = 0, j = 0]) => {
    const dx = (i * across) / 2, dy = (j * down) / 2
    return [x + dx * cos - dy * sin, y + dx * sin + dy * cos]
  }), true)
}
