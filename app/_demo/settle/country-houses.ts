import { isInFrame } from '../frame'
import { resample } from '../geometry/line'
import { between, heading, offset } from '../geometry/spot'
import type { HeightField } from '../land/height-field'
import { chance, purpose } from '../land/noise'
import type { Network } from '../roads/network'
import { house, type Building } from './building'
import type { GroundIndex } from './ground-index'

const drive = { highway: 'service', service: 'driveway', access: 'private', surface: 'gravel' }

/** Scattered houses along country roads, each at the end of its private drive. */
export function countryHouses(field: HeightField, network: Network, ground: GroundIndex, wet: GroundIndex, isVillage: (x: number, y: number) => boolean): Building[] {
  const built: Building[] = []
  const roads = [...network.roads]
  roads.forEach((road, roadIndex) => {
    const { highway, railway } = road.tags
    if (railway || !['primary', 'tertiary', 'unclassified'].includes(highway ?? '')) return
    const spots = resample(road.nodes.map(({ spot }) => spot), 45)
    const often = highway === 'tertiary' ? 0.24 : highway === 'primary' ? 0.2 : 0.17
    for (let i = 2; i + 2 < spots.length; i++) {
      const here = spots[i]!
      const draw = (n: number): number => chance(purpose.houses, 50_000 + roadIndex * 977 + i, n)
      if (draw(0) > often || !isInFrame(here) || isVillage(here.x, here.y)) continue
      const along = heading(spots[i - 1]!, spots[i + 1]!)
      const side = draw(1) < 0.5 ? 1 : -1
      const back = 18 + 75 * draw(2) ** 2
      const facing = side > 0 ? along : { x: -along.x, y: -along.y }
      const middle = offset(here, facing, 14 * draw(3) - 7, back + 8)
      if (field.slopeAt(middle) > 0.2 || !isInFrame(middle)) continue
      const turned = heading({ x: 0, y: 0 }, { x: facing.x + 0.5 * (draw(4) - 0.5), y: facing.y + 0.5 * (draw(5) - 0.5) })
      const ring = house(middle, turned, 10 + 5 * draw(6), 8 + 2 * draw(7), draw(8) < 0.5 ? 4 : 0)
      const end = offset(middle, turned, 0, -9)
      const way = [here, offset(between(here, end, 0.5), facing, 6 * draw(9) - 3, 0), end]
      if (!ground.isFree(ring, 9) || !ground.isFree([end], 9) || !wet.isFree(resample(way, 5), 3)) continue
      ground.addRing(ring)
      built.push({ ring, tags: { building: 'house' } })
      if (back > 30) {
        ground.addLine(way, 2)
        network.lay(`drive${roadIndex}-${i}`, way, drive, { snap_m: 3, isEndFree: true })
      }
      if (draw(10) < 0.35) {
        const shed = house(offset(middle, turned, 17, 5), turned, 7 + 4 * draw(11), 6, 0)
        if (ground.isFree(shed, 4)) {
          ground.addRing(shed)
          built.push({ ring: shed, tags: { building: draw(12) < 0.5 ? 'garage' : 'shed' } })
        }
      }
    }
  })
  return built
}
