import { isInFrame, type Spot } from '../frame'
import type { Ring } from '../geometry/polygon'
import { offset } from '../geometry/spot'
import type { HeightField } from '../land/height-field'
import { chance, purpose } from '../land/noise'
import type { Tags } from '../roads/network'
import type { Farm } from './farms'
import type { GroundIndex } from './ground-index'

export type Field = { ring: Ring; tags: Tags; centre: Spot }

/** Fields around each farm, lying with its lane: as many as roads, water and slope leave room for. */
export function layFields(field: HeightField, farms: readonly Farm[], ground: GroundIndex): Field[] {
  const laid: Field[] = []
  farms.forEach((farm, index) => {
    let count = 0
    for (const [i, j] of inRings(5)) {
      if (count >= 13) return
      const draw = (n: number): number => chance(purpose.fields, index * 200 + (i + 6) * 13 + j + 6, n)
      const [long, wide] = [150 + 25 * Math.sign(i), 118]
      const centre = offset(farm.at, farm.along, i * 172 + 20 * draw(0), j * 132 + 16 * draw(1))
      if (!isInFrame(centre) || field.slopeAt(centre) > 0.17) continue
      const corner = (ahead: number, left: number, n: number): Spot => offset(centre, farm.along, (ahead * long) / 2 + 16 * (draw(n) - 0.5), (left * wide) / 2 + 16 * (draw(n + 1) - 0.5))
      const ring = [corner(-1, -1, 2), corner(1, -1, 4), corner(1, 1, 6), corner(-1, 1, 8)]
      if (!ring.every(isInFrame) || !ground.isFree(ring, 4, 14)) continue
      ground.addRing(ring)
      count++
      laid.push({ ring, centre, tags: kindOf(farm, draw(10), count) })
    }
  })
  return laid
}

function kindOf(farm: Farm, draw: number, count: number): Tags {
  if (farm.kind === 'orchard' && count < 4) return { landuse: 'orchard' }
  if (farm.kind === 'sheep') return { landuse: draw < 0.75 ? 'meadow' : 'farmland' }
  return draw < 0.5 ? { landuse: 'farmland' } : { landuse: 'meadow' }
}

/** Places of a grid about its middle, nearest first. */
function inRings(reach: number): [number, number][] {
  const places: [number, number][] = []
  for (let i = -reach; i <= reach; i++) for (let j = -reach; j <= reach; j++) places.push([i, j])
  return places.sort(([a, b], [c, d]) => a * a + b * b - (c * c + d * d) || a - c || b - d)
}
