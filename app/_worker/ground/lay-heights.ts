import { isCounted, type District, type GroundHeights, type Lay, type Plan } from '@/lib/plan'
import { layHeightsKey } from '@/lib/supply'
import { profileAlong } from '@/lib/terrain'
import type { TerrainGrids } from './terrain-grids'

/** Closer than any sample of the usual elevation data; corners of the way count besides. */
export const LAY_STEP_FT = 50

/** Lays of a plan whose ground its answer stands on. */
export const countedLays = (plan: Plan): readonly Lay[] => (plan.hoseLays ?? []).filter(isCounted)

/** The ground under hose lays, as a bundle keeps it; nothing where the district's elevation is absent or cannot be read. */
export async function layHeights(grids: TerrainGrids, { terrain }: Pick<District, 'terrain'>, lays: readonly Pick<Lay, 'points'>[]): Promise<GroundHeights[]> {
  if (!terrain || lays.length === 0) return []
  const grid = await grids.gridFor(terrain)
  if ('code' in grid) return []
  return lays.map((lay) => ({
    key: layHeightsKey({ terrain }, lay),
    points: profileAlong(grid, lay.points, LAY_STEP_FT).map(({ distance_ft, height_ft, doubt_ft }) => ({ distance_ft, ...(height_ft !== undefined && { height_ft }), ...(doubt_ft !== undefined && { doubt_ft }) })),
  }))
}
