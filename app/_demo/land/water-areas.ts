import type { Spot } from '../frame'
import { areasWhere, roundedRing } from '../geometry/contour'
import { nearestOnLine, simplify, type Line } from '../geometry/line'
import { isInRing, type Ring } from '../geometry/polygon'
import { heading, offset } from '../geometry/spot'
import type { HeightField } from './height-field'
import { chance, noise, purpose } from './noise'
import type { Stream } from './streams'

export type WaterArea = { key: string; name?: string; kind: 'reservoir' | 'pond' | 'river'; outer: Ring; surface_m: number }
export type Barrier = { key: string; name: string; kind: 'dam' | 'weir'; line: Line }

/** Water held back by a dam: ground below the pool, upstream of the dam's line. */
function pool(field: HeightField, stream: Stream, near: Spot, depth_m: number, length_m: number, half_m: number): { ring: Ring; dam: Line; surface_m: number } {
  const { segment, spot: foot } = nearestOnLine(stream.water, near)
  const down = heading(stream.water[Math.max(0, segment - 3)]!, stream.water[Math.min(stream.water.length - 1, segment + 3)]!)
  const surface_m = field.at(foot) + depth_m
  // A pool on a flat floor spreads as far as its banks were raised: a long round, wandering at its edge.
  const value = (here: Spot): number => {
    const ahead = (here.x - foot.x) * down.x + (here.y - foot.y) * down.y
    const side = (here.y - foot.y) * down.x - (here.x - foot.x) * down.y
    const round = ((ahead + length_m * 0.42) / (length_m * 0.58)) ** 2 + (side / half_m) ** 2
    return Math.min(surface_m - field.at(here) + 0.35 * noise(purpose.shore, here.x, here.y, 60), -ahead / 12, 2.5 * (1 - round + 0.7 * noise(purpose.shore, here.x, here.y, half_m * 0.9)))
  }
  const window = { west: foot.x - length_m, south: foot.y - length_m, east: foot.x + length_m, north: foot.y + length_m, cell_m: length_m > 600 ? 18 : 7 }
  const behind = offset(foot, down, -window.cell_m * 1.5, 0)
  const areas = areasWhere(value, window)
  const area = areas.find(({ outer }) => isInRing(outer, behind)) ?? areas[0]!
  const ring = simplify(roundedRing(area.outer, 2), 1.2)
  const face = ring.filter((here) => Math.abs((here.x - foot.x) * down.x + (here.y - foot.y) * down.y) < 14)
  const across = face.map((here) => (here.y - foot.y) * down.x - (here.x - foot.x) * down.y)
  const [right, left] = [Math.min(...across) - 8, Math.max(...across) + 8]
  return { ring, dam: [offset(foot, down, 4, right), offset(foot, down, 4, left)], surface_m }
}

/** A farm pond: a lopsided round of water in a hollow. */
function pondRing(centre: Spot, radius_m: number, entity: number): Ring {
  const spots: Spot[] = []
  for (let k = 0; k < 20; k++) {
    const angle = (k / 20) * 2 * Math.PI
    const reach = radius_m * (0.8 + 0.4 * chance(purpose.shore, entity, k % 20)) * (1 + 0.3 * Math.cos(angle * 2 + entity))
    spots.push({ x: centre.x + reach * Math.cos(angle), y: centre.y + reach * Math.sin(angle) * 0.8 })
  }
  return roundedRing(spots, 3)
}

/** The river as an area, a little wider in its bends; in pieces, as mappers keep them. */
function riverRings(river: Stream): Ring[] {
  const rings: Ring[] = []
  const piece = 90
  for (let from = 0; from + 1 < river.water.length; from += piece) {
    const to = Math.min(river.water.length - 1, from + piece)
    const [left, right]: [Spot[], Spot[]] = [[], []]
    for (let i = from; i <= to; i++) {
      const here = river.water[i]!
      const ahead = heading(river.water[Math.max(0, i - 1)]!, river.water[Math.min(river.water.length - 1, i + 1)]!)
      const half = (river.width_m / 2) * (1 + 0.3 * noise(purpose.shore, here.x, here.y, 180))
      left.push(offset(here, ahead, 0, half))
      right.push(offset(here, ahead, 0, -half))
    }
    rings.push([...right, ...left.reverse()])
  }
  return rings
}

export type FarmPond = { key: string; name?: string; x: number; y: number; radius_m: number }

const farmPonds: readonly FarmPond[] = [
  { key: 'applegarthPond', name: 'Applegarth Pond', x: 2684, y: 4514, radius_m: 34 },
  { key: 'pond2', x: 9480, y: 6760, radius_m: 22 },
  { key: 'pond3', name: 'Goose Pond', x: 10150, y: 3600, radius_m: 40 },
  { key: 'pond4', x: 5260, y: 3050, radius_m: 18 },
  { key: 'pond5', x: 1250, y: 6500, radius_m: 20 },
  { key: 'pond6', x: 8450, y: 2400, radius_m: 20 },
  { key: 'pond7', name: 'Kettle Pond', x: 6220, y: 7480, radius_m: 46 },
  { key: 'pond8', x: 2000, y: 2450, radius_m: 16 },
  { key: 'pond9', x: 10720, y: 6260, radius_m: 18 },
]

export function buildWater(field: HeightField, streams: readonly Stream[]): { areas: WaterArea[]; barriers: Barrier[] } {
  const stream = (id: string): Stream => streams.find((one) => one.id === id)!
  const reservoir = pool(field, stream('stonecrop'), { x: 4790, y: 7060 }, 13, 1500, 900)
  const mill = pool(field, stream('stonecrop'), { x: 5440, y: 5640 }, 3.2, 200, 75)
  const village = pool(field, stream('fiddlers'), { x: 8350, y: 3560 }, 2.6, 170, 60)
  const areas: WaterArea[] = [
    { key: 'reservoir', name: 'Stonecrop Reservoir', kind: 'reservoir', outer: reservoir.ring, surface_m: reservoir.surface_m },
    { key: 'millPond', name: 'Mill Pond', kind: 'pond', outer: mill.ring, surface_m: mill.surface_m },
    { key: 'cooperPond', name: 'Cooper’s Pond', kind: 'pond', outer: village.ring, surface_m: village.surface_m },
    ...farmPonds.map(({ key, name, x, y, radius_m }, i): WaterArea => ({
      key, ...(name ? { name } : {}), kind: 'pond', outer: pondRing({ x, y }, radius_m, i), surface_m: field.at({ x, y }) - 0.8,
    })),
    ...riverRings(stream('ostrel')).map((outer, i): WaterArea => ({ key: `river${i}`, name: 'Ostrel River', kind: 'river', outer, surface_m: 0 })),
  ]
  const barriers: Barrier[] = [
    { key: 'stonecropDam', name: 'Stonecrop Dam', kind: 'dam', line: reservoir.dam },
    { key: 'millWeir', name: 'Mill Weir', kind: 'weir', line: mill.dam },
    { key: 'cooperWeir', name: 'Cooper’s Weir', kind: 'weir', line: village.dam },
  ]
  return { areas, barriers }
}
