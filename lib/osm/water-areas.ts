import { METRES_PER_DEGREE, type Point } from '../geo'
import { METRES_PER_FOOT } from '../units'
import type { DistrictMap, MapFeature } from './district-map'

/** Open water of the map that a pumper might draft from. */
export type WaterArea = {
  readonly osmId: number
  readonly name: string
  readonly kind: 'pond' | 'lake' | 'reservoir' | 'basin' | 'water'
  readonly surface_sqft: number
  /** A place that lies in the water. */
  readonly point: Point
  /** A few places along its shore, evenly picked. */
  readonly shore: readonly Point[]
}

/** Running water has no middle and no volume; sewage is no source. What is left and has no kind of its own is water. */
const left = new Set(['river', 'riverbank', 'stream', 'canal', 'ditch', 'drain', 'lock', 'fish_pass', 'rapids', 'wastewater', 'sewage'])
const own = { pond: 'pond', lake: 'lake', oxbow: 'lake', lagoon: 'lake', reservoir: 'reservoir', basin: 'basin' } as const satisfies Record<string, WaterArea['kind']>
const MOST_SHORE_POINTS = 12

/**
 * Ponds, lakes and other standing water of a map, with their surfaces.
 *
 *   surface = Σ outer rings − Σ holes, by the shoelace formula on the plane that touches the earth there
 *
 * @returns in the map's order; empty rings left out
 */
export function waterAreas({ features }: Pick<DistrictMap, 'features'>): WaterArea[] {
  return features.flatMap((feature): WaterArea[] => {
    if (feature.layer !== 'water' || feature.shape !== 'area' || left.has(feature.kind)) return []
    const surface_m2 = feature.runs.reduce((sum, ring, i) => sum + (feature.isHole[i] ? -1 : 1) * ringArea_m2(ring), 0)
    const largest = feature.runs.filter((_, i) => !feature.isHole[i]).sort((a, b) => ringArea_m2(b) - ringArea_m2(a))[0]
    const point = largest && placeInside(feature, largest)
    if (!largest || !point || surface_m2 <= 0) return []
    return [{ osmId: feature.osmId, name: feature.name, kind: kindOf(feature.kind), surface_sqft: surface_m2 / METRES_PER_FOOT ** 2, point, shore: picked(largest) }]
  })
}

const kindOf = (kind: string): WaterArea['kind'] => (Object.hasOwn(own, kind) ? own[kind as keyof typeof own] : 'water')

function ringArea_m2(ring: readonly Point[]): number {
  const first = ring[0]
  if (!first) return 0
  const perLon_m = METRES_PER_DEGREE * Math.cos((first.lat * Math.PI) / 180)
  let twice = 0
  for (let i = 0, before = ring.length - 1; i < ring.length; before = i++) {
    const a = ring[before] ?? first, b = ring[i] ?? first
    twice += (a.lon - first.lon) * (b.lat - first.lat) - (b.lon - first.lon) * (a.lat - first.lat)
  }
  return Math.abs((twice / 2) * perLon_m * METRES_PER_DEGREE)
}

/** The middle of the widest stretch of water on the line through the middle of the ring's height; islands are left out. */
function placeInside({ runs }: MapFeature, ring: readonly Point[]): Point | undefined {
  const lats = ring.map(({ lat }) => lat)
  const lat = (Math.min(...lats) + Math.max(...lats)) / 2
  const crossings = runs.flatMap((run) => run.flatMap((b, i) => {
    const a = run[(i || run.length) - 1] ?? b
    return a.lat > lat !== b.lat > lat ? [a.lon + ((lat - a.lat) / (b.lat - a.lat)) * (b.lon - a.lon)] : []
  })).sort((a, b) => a - b)
  let best: { lon: number; span: number } | undefined
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const west = crossings[i] ?? 0, span = (crossings[i + 1] ?? 0) - west
    if (!best || span > best.span) best = { lon: west + span / 2, span }
  }
  return best && { lat, lon: best.lon }
}

const picked = (ring: readonly Point[]): Point[] => {
  const step = Math.max(1, ring.length / MOST_SHORE_POINTS)
  return Array.from({ length: Math.ceil(ring.length / step) }, (_, i) => ring[Math.floor(i * step)]).filter((point) => point !== undefined)
}
