import { isCounted, type District, type GroundHeights, type Lay, type Plan } from '@/lib/plan'
import { layHeightsKey } from '@/lib/supply'
import { profileAlong, type HeightGrid } from '@/lib/terrain'
import type { RoadDesk } from '../road-desk'
import { layStands } from './lay-stands'
import type { TerrainGrids } from './terrain-grids'

/** Closer than any sample of the usual elevation data; corners of the way count besides. */
const LAY_STEP_FT = 50

/** Lays of a plan whose ground its answer stands on. */
export const countedLays = (plan: Plan): readonly Lay[] => (plan.hoseLays ?? []).filter(isCounted)

/** Roads on which the pumpers of a district may drive. */
export type FindDesk = (district: District) => Promise<RoadDesk | undefined>

/** Ground under one lay, as a bundle keeps it. */
export const heightsUnder = (grid: HeightGrid | undefined, district: District, lay: Lay, desk?: RoadDesk): GroundHeights => ({
  key: layHeightsKey(district, lay),
  points: grid ? profileAlong(grid, lay.points, LAY_STEP_FT).map(({ distance_ft, height_ft, doubt_ft }) => ({ distance_ft, ...(height_ft !== undefined && { height_ft }), ...(doubt_ft !== undefined && { doubt_ft }) })) : [],
  ...(lay.standsOnRoads && desk && { stands_ft: layStands(desk, district, lay) }),
})

/** The ground under hose lays, and where their pumpers can stand on roads when that is asked; nothing of what the district has not or cannot be read. */
export async function layHeights(grids: TerrainGrids, findDesk: FindDesk, district: District, lays: readonly Lay[]): Promise<GroundHeights[]> {
  if (lays.length === 0) return []
  const grid = district.terrain && (await grids.gridFor(district.terrain))
  const known = grid && !('code' in grid) ? grid : undefined
  const desk = lays.some(({ standsOnRoads }) => standsOnRoads) ? await findDesk(district) : undefined
  return known || desk ? lays.map((lay) => heightsUnder(known, district, lay, desk)) : []
}
