import type { Spot } from '../frame'
import { nearestOnLine, resample, simplify, soften } from '../geometry/line'
import type { Ring } from '../geometry/polygon'
import { gap, heading, offset, spot } from '../geometry/spot'
import { chance, purpose } from '../land/noise'
import type { WayFinder } from '../roads/find-way'
import type { Network, Tags } from '../roads/network'
import { block, house, round, type Building } from './building'
import { farmPlans, type FarmPlan } from './farm-plan'
import type { GroundIndex } from './ground-index'

export type Farm = FarmPlan & { at: Spot; along: Spot; yard: Ring; barn: Spot; houseAt: Spot }
export type Farms = { farms: Farm[]; buildings: Building[] }

const namedLane = (name: string): Tags => ({ highway: 'unclassified', name, surface: 'gravel', lanes: '1' })
const plainLane: Tags = { highway: 'service', surface: 'gravel', access: 'private', lanes: '1' }

const SET_BACK_M = 85

/** Lanes first, each from the nearest road, then the yards they end in. */
export function layFarms(network: Network, finder: WayFinder, ground: GroundIndex): Farms {
  const buildings: Building[] = []
  const farms = farmPlans.map((plan, index): Farm => {
    const start = nearestRoadSpot(network, spot(plan.x, plan.y))
    // A farm stands back from the road, however near it was put.
    const at = gap(start, plan) >= SET_BACK_M ? spot(plan.x, plan.y) : offset(start, heading(start, plan), SET_BACK_M, 0)
    const cells = finder.find(start, at, 0.1)
    const line = cells.length > 3 ? simplify(soften(resample(soften(resample(cells, 40), 4), 20), 4), 1.5) : cells
    const lane = network.lay(`lane-${plan.key}`, line, plan.lane ? namedLane(plan.lane) : plainLane, { isEndFree: true })
    ground.addLine(line, 3)
    const before = lane.nodes[lane.nodes.length - 2]!.spot
    const along = heading(before, at)
    const side = chance(purpose.farms, index, 0) < 0.5 ? 1 : -1
    const draw = (n: number): number => chance(purpose.farms, index, n)
    const houseAt = offset(at, along, -14, side * 20)
    const barn = offset(at, along, 24, -side * 10)
    const place = (ring: Ring, tags: Tags): void => {
      if (!ground.isFree(ring, 1)) return
      ground.addRing(ring)
      buildings.push({ ring, tags })
    }
    const turned = heading({ x: 0, y: 0 }, { x: along.x + 0.3 * (draw(1) - 0.5), y: along.y + 0.3 * (draw(2) - 0.5) })
    const across = { x: -turned.y, y: turned.x }
    place(house(houseAt, turned, 13, 9, 5), { building: 'farm' })
    place(block(barn, plan.kind === 'dairy' ? turned : across, plan.kind === 'dairy' ? 30 : 20, 12), { building: 'barn' })
    place(block(offset(at, turned, 18, side * 22), across, 22 + 10 * draw(3), 9), { building: plan.kind === 'dairy' ? 'cowshed' : 'barn' })
    place(block(offset(at, turned, 2, -side * 26), turned, 14, 7), { building: 'farm_auxiliary' })
    if (plan.kind === 'dairy') for (const n of [0, 1]) place(round(offset(at, turned, 46, -side * (4 + 9 * n)), 3.6), { building: 'silo' })
    const yard = [offset(at, turned, -28, -36), offset(at, turned, 40, -38), offset(at, turned, 54, -8), offset(at, turned, 44, 38), offset(at, turned, -26, 34)]
    return { ...plan, at, along: turned, yard, barn, houseAt }
  })
  return { farms, buildings }
}

function nearestRoadSpot(network: Network, to: Spot): Spot {
  let best = { spot: to, away: Infinity }
  for (const { nodes, tags } of network.roads) {
    if (tags.railway || tags.highway === 'service') continue
    const found = nearestOnLine(nodes.map(({ spot: at }) => at), to)
    if (found.away < best.away) best = found
  }
  return best.spot
}
