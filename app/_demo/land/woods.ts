import { HEIGHT_M, WIDTH_M, type Spot } from '../frame'
import { areasWhere, roundedRing, type Area } from '../geometry/contour'
import { simplify } from '../geometry/line'
import { ringArea, type Ring } from '../geometry/polygon'
import { gap } from '../geometry/spot'
import type { HeightField } from './height-field'
import { purpose, roughNoise } from './noise'

export type Clearing = { at: Spot; radius_m: number }

const CELL_M = 30
const SMALLEST_M2 = 6000

const eased = (ring: Ring): Spot[] => {
  const now = roundedRing(ring, 2)
  return simplify([...now, now[0]!], 4).slice(0, -1)
}

/** Woods stand on what is too steep, too high or too far to farm; clearings around farms and villages are kept open. */
export function buildWoods(field: HeightField, clearings: readonly Clearing[]): Area[] {
  const columns = Math.ceil(WIDTH_M / CELL_M) + 5
  const openness = new Float64Array(columns * (Math.ceil(HEIGHT_M / CELL_M) + 5))
  for (const { at, radius_m } of clearings) {
    const reach = Math.ceil((radius_m * 1.6) / CELL_M)
    const [i, j] = [Math.round(at.x / CELL_M) + 2, Math.round(at.y / CELL_M) + 2]
    for (let dj = -reach; dj <= reach; dj++)
      for (let di = -reach; di <= reach; di++) {
        const k = (j + dj) * columns + i + di
        if (i + di < 0 || i + di >= columns || k < 0 || k >= openness.length) continue
        const away = gap(at, { x: (i + di - 2) * CELL_M, y: (j + dj - 2) * CELL_M })
        openness[k] = Math.max(openness[k]!, 1.6 - away / radius_m)
      }
  }
  const value = (here: Spot): number => {
    const open = openness[(Math.round(here.y / CELL_M) + 2) * columns + Math.round(here.x / CELL_M) + 2]!
    const steep = Math.min(1.2, field.slopeAt(here) / 0.19)
    const high = Math.max(-0.5, Math.min(0.6, (field.at(here) - 290) / 130))
    return steep + high - 0.75 + 0.62 * roughNoise(purpose.woods, here.x, here.y, 620) - 1.5 * open
  }
  const areas = areasWhere(value, { west: -60, south: -60, east: WIDTH_M + 60, north: HEIGHT_M + 60, cell_m: CELL_M })
  return areas
    .filter(({ outer }) => ringArea(outer) > SMALLEST_M2)
    .map(({ outer, holes }) => ({ outer: eased(outer), holes: holes.filter((hole) => Math.abs(ringArea(hole)) > SMALLEST_M2).map(eased) }))
}
