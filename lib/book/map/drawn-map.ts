import { findBounds, type Bounds, type Point } from '../../geo'
import { isRoadLayer, roadLayers, type DistrictMap, type MapFeature, type MapLayer, type RoadLayer } from '../../osm'
import { clipLine, clipRing, thinned } from './clip'
import { groundOf, spotOf, type PaperView, type Spot } from './paper-view'

/** Of a road or stream: where its name may be written. */
export type NamedPlace = Spot & { readonly angle: number; readonly length: number }

export type MapName = { readonly text: string; readonly kind: 'place' | 'water' | 'road'; readonly rank: number; readonly places: readonly NamedPlace[] }

/** A district's map cut to a view, in points of paper. */
export type DrawnMap = {
  /** Rings of one area each; the edge may run along the frame where it was cut, so `shores` are drawn in its place. */
  readonly waters: readonly { readonly rings: readonly number[][]; readonly shores: readonly number[][] }[]
  readonly buildings: readonly { readonly rings: readonly number[][] }[]
  readonly streams: readonly { readonly kind: string; readonly line: number[] }[]
  readonly roads: readonly { readonly layer: RoadLayer; readonly line: number[] }[]
  /** Most important first, each text once. */
  readonly names: readonly MapName[]
}

/** Coarser than so many metres a point a layer is not drawn: it would be a blot. */
const coarsest: Readonly<Record<MapLayer, number>> = {
  majorRoad: Infinity, mainRoad: Infinity, minorRoad: 70, localRoad: 24, serviceRoad: 6, track: 8, waterway: 24, water: Infinity, building: 3.5, place: Infinity, source: 0,
}
/** And so its names. */
const coarsestNamed: Readonly<Record<MapLayer, number>> = { ...coarsest, minorRoad: 14, localRoad: 8, serviceRoad: 2, track: 4, mainRoad: 40, waterway: 12 }
const placeRank: Readonly<Record<string, number>> = { city: 0, town: 1, village: 2, suburb: 3, hamlet: 4 }
const roadRank: Readonly<Record<RoadLayer, number>> = { majorRoad: 20, mainRoad: 21, minorRoad: 22, localRoad: 23, serviceRoad: 25, track: 24 }
/** Areas smaller than this are a speck. */
const LEAST_AREA = 3
const NEAREST = 0.5

const bounds = new WeakMap<MapFeature, Bounds>()

/** What of a district's map lies in a view, the finer the closer it looks. */
export function drawnMap(map: Pick<DistrictMap, 'features'>, view: PaperView): DrawnMap {
  const { box, metresPerPoint } = view
  const ground = groundOf(view)
  const waters: { rings: number[][]; shores: number[][] }[] = []
  const buildings: { rings: number[][] }[] = []
  const streams: { kind: string; line: number[] }[] = []
  const roads: { layer: RoadLayer; line: number[] }[] = []
  const names = new Map<string, MapName>()
  const flat = (points: readonly Point[]): number[] => thinned(points.flatMap((point) => { const { x, y } = spotOf(view, point); return [x, y] }), NEAREST)
  const name = (text: string, kind: MapName['kind'], rank: number, places: readonly NamedPlace[]) => {
    if (text === '' || places.length === 0) return
    const known = names.get(`${kind} ${text}`)
    names.set(`${kind} ${text}`, { text, kind, rank: Math.min(rank, known?.rank ?? rank), places: [...(known?.places ?? []), ...places].sort((a, b) => b.length - a.length).slice(0, 6) })
  }
  for (const feature of map.features) {
    const { layer, shape, runs, isHole } = feature
    if (metresPerPoint > coarsest[layer] || !meets(ground, feature)) continue
    const text = metresPerPoint > coarsestNamed[layer] ? '' : feature.name.trim()
    if (shape === 'point') {
      const [point] = runs[0] ?? []
      if (layer === 'place' && point) name(text, 'place', placeRank[feature.kind] ?? (metresPerPoint < 8 ? 6 : 99), [{ ...spotOf(view, point), angle: 0, length: 1000 }])
      continue
    }
    const lines = runs.map(flat)
    if (shape === 'line') {
      for (const line of lines.flatMap((one) => clipLine(one, box))) {
        if (isRoadLayer(layer)) roads.push({ layer, line })
        else if (layer === 'waterway') streams.push({ kind: feature.kind, line })
        if (text !== '') name(text, isRoadLayer(layer) ? 'road' : 'water', isRoadLayer(layer) ? roadRank[layer] : 11, straightPlaces(line))
      }
      continue
    }
    const rings = lines.map((line) => clipRing(line, box)).filter(({ length }) => length > 0)
    if (rings.length === 0 || Math.max(...rings.map(areaOf)) < LEAST_AREA) continue
    if (layer === 'building') buildings.push({ rings })
    if (layer === 'water') {
      waters.push({ rings, shores: lines.flatMap((line) => clipLine([...line, line[0] ?? 0, line[1] ?? 0], box)) })
      const outer = rings[isHole.findIndex((hole) => !hole)] ?? rings[0]
      if (outer) name(text, 'water', 10, [{ ...middleOf(outer), angle: 0, length: 1000 }])
    }
  }
  const wanted = [...names.values()].filter(({ rank }) => rank < 90)
  return { waters, buildings, streams, roads: roads.sort((a, b) => roadLayers.indexOf(a.layer) - roadLayers.indexOf(b.layer)), names: wanted.sort((a, b) => a.rank - b.rank || (a.text < b.text ? -1 : 1)) }
}

function meets(ground: Bounds, feature: MapFeature): boolean {
  const own = bounds.get(feature) ?? findBounds(feature.runs.flat())
  if (!own) return false
  bounds.set(feature, own)
  return own.south <= ground.north && own.north >= ground.south && own.west <= ground.east && own.east >= ground.west
}

/** Twice the area is the sum of the cross products (shoelace formula). */
function areaOf(ring: readonly number[]): number {
  let twice = 0
  for (let i = 0; i + 1 < ring.length; i += 2) {
    const j = (i + 2) % ring.length
    twice += (ring[i] ?? 0) * (ring[j + 1] ?? 0) - (ring[j] ?? 0) * (ring[i + 1] ?? 0)
  }
  return Math.abs(twice) / 2
}

function middleOf(ring: readonly number[]): Spot {
  const xs = ring.filter((_, i) => i % 2 === 0), ys = ring.filter((_, i) => i % 2 === 1)
  return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 }
}

/** How far a name may leave the line it is written along, in points. */
const STRAY = 2.2

/** Middles of the straight stretches of a line, the longest first, the text upright. */
function straightPlaces(line: readonly number[]): NamedPlace[] {
  const places: NamedPlace[] = []
  let start = 0
  while (start + 3 < line.length) {
    let end = start + 2
    while (end + 3 < line.length && isStraight(line, start, end + 2)) end += 2
    const [ax = 0, ay = 0] = [line[start], line[start + 1]], [bx = 0, by = 0] = [line[end], line[end + 1]]
    const angle = Math.atan2(by - ay, bx - ax)
    places.push({ x: (ax + bx) / 2, y: (ay + by) / 2, angle: angle > Math.PI / 2 ? angle - Math.PI : angle <= -Math.PI / 2 ? angle + Math.PI : angle, length: Math.hypot(bx - ax, by - ay) })
    start = end
  }
  return places.sort((a, b) => b.length - a.length).slice(0, 4)
}

function isStraight(line: readonly number[], start: number, end: number): boolean {
  const ax = line[start] ?? 0, ay = line[start + 1] ?? 0, dx = (line[end] ?? 0) - ax, dy = (line[end + 1] ?? 0) - ay
  const length = Math.hypot(dx, dy) || 1
  for (let i = start + 2; i < end; i += 2) if (Math.abs(((line[i] ?? 0) - ax) * dy - ((line[i + 1] ?? 0) - ay) * dx) / length > STRAY) return false
  return true
}
