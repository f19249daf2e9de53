import { isInFrame } from '../frame'
import { lineLength, resample } from '../geometry/line'
import { heading, offset } from '../geometry/spot'
import { chance, purpose } from '../land/noise'
import type { Network } from '../roads/network'
import { house, type Building } from './building'
import type { GroundIndex } from './ground-index'

/** Houses on both sides of village streets, set back unevenly, with gaps for gardens. */
export function streetHouses(network: Network, ground: GroundIndex, isVillage: (x: number, y: number) => boolean): Building[] {
  const built: Building[] = []
  network.roads.forEach(({ nodes, tags }, roadIndex) => {
    if (!['residential', 'primary', 'tertiary', 'unclassified'].includes(tags.highway ?? '')) return
    const line = nodes.map(({ spot }) => spot)
    const spots = resample(line, 12)
    if (lineLength(line) < 30) return
    for (const side of [1, -1]) {
      let next = 1 + Math.floor(chance(purpose.houses, roadIndex, side + 1) * 2)
      for (let i = next; i + 1 < spots.length; i++) {
        if (i < next) continue
        const here = spots[i]!
        if (!isVillage(here.x, here.y) || !isInFrame(here)) continue
        const draw = (n: number): number => chance(purpose.houses, roadIndex * 977 + i, n + (side > 0 ? 0 : 40))
        next = i + 2 + Math.floor(draw(0) * 1.7)
        if (draw(1) < 0.16) continue
        const along = heading(spots[i - 1]!, spots[i + 1]!)
        const facing = side > 0 ? along : { x: -along.x, y: -along.y }
        const [length, width] = [9 + 5 * draw(2), 7 + 2.5 * draw(3)]
        const middle = offset(here, facing, 2 * draw(4) - 1, 11 + width / 2 + 6 * draw(5) ** 2)
        const ring = house(middle, facing, length, width, draw(6) < 0.4 ? 3.5 + 2 * draw(7) : 0)
        if (!ground.isFree(ring, 5)) continue
        ground.addRing(ring)
        built.push({ ring, tags: { building: 'house' } })
        if (draw(8) < 0.3) {
          const garage = house(offset(middle, facing, length / 2 + 6, 4 + width / 2), facing, 6, 5.5, 0)
          if (ground.isFree(garage, 3)) {
            ground.addRing(garage)
            built.push({ ring: garage, tags: { building: 'garage' } })
          }
        }
      }
    }
  })
  return built
}
