import type { Spot } from '../frame'
import { curveThrough, nearestOnLine, resample, simplify, soften } from '../geometry/line'
import { isInRing } from '../geometry/polygon'
import { spot } from '../geometry/spot'
import type { HeightField } from '../land/height-field'
import type { Stream } from '../land/streams'
import type { WaterArea } from '../land/water-areas'
import { wayFinder, type WayFinder } from './find-way'
import { Network } from './network'
import { throughRoads, type RoadPlan } from './road-plan'

export type Groundwork = { network: Network; finder: WayFinder }

/** Through roads over the ground, before villages, farms and tracks. */
export function layThroughRoads(field: HeightField, streams: readonly Stream[], water: readonly WaterArea[]): Groundwork {
  const finder = wayFinder(field)
  for (const { water: line, kind } of streams) finder.avoid(resample(line, 20), kind === 'river' ? 45 : 20, kind === 'river' ? 900 : 140)
  for (const { kind, outer } of water) {
    if (kind === 'river') continue
    finder.avoid(resample([...outer, outer[0]!], 20), 45, 3000)
    finder.avoid(gridInside(outer), 30, 3000)
  }
  const network = new Network()
  for (const plan of throughRoads) layPlan(network, finder, plan)
  return { network, finder }
}

/** Ends of a through road this near another are meant to meet it. */
const MEET_M = 320

export function layPlan(network: Network, finder: WayFinder, plan: RoadPlan): void {
  const drawn = plan.through.map(([x, y]) => spot(x, y))
  const through = drawn.map((here, i) => (i === 0 || (i === drawn.length - 1 && !plan.isDeadEnd) ? placeOnRoad(network, here, plan.isDrawn ? 40 : MEET_M) : here))
  const line = plan.isDrawn ? simplify(curveThrough(through, 6), 0.8) : ledByGround(finder, through, plan)
  network.lay(plan.key, line, plan.tags, { isEndFree: plan.isDeadEnd ?? false })
  if (!plan.isDrawn) finder.avoid(resample(line, 30), 70, 35)
}

function placeOnRoad(network: Network, here: Spot, reach_m: number): Spot {
  let best = { spot: here, away: reach_m }
  for (const road of network.roads) {
    const found = nearestOnLine(road.nodes.map(({ spot: at }) => at), here)
    if (found.away < best.away) best = found
  }
  return best.spot
}

/** Cells of the found way, eased into curves: the better the road, the wider they are. */
function ledByGround(finder: WayFinder, through: readonly Spot[], { grade, tags }: RoadPlan): Spot[] {
  const cells: Spot[] = []
  for (let i = 0; i + 1 < through.length; i++) cells.push(...finder.find(through[i]!, through[i + 1]!, grade).slice(i === 0 ? 0 : 1))
  const rounds = tags.highway === 'primary' ? 22 : tags.highway === 'tertiary' ? 10 : 6
  return simplify(soften(resample(soften(resample(cells, 40), rounds), 22), 6), 1.6)
}

function gridInside(ring: readonly Spot[]): Spot[] {
  const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)]
  const inside: Spot[] = []
  for (let x = Math.min(...xs); x <= Math.max(...xs); x += 30) for (let y = Math.min(...ys); y <= Math.max(...ys); y += 30) if (isInRing(ring, { x, y })) inside.push({ x, y })
  return inside
}
