import type { Point } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import type { District, GroundHeights, Lay } from '@/lib/plan'
import { findHeight, type GroundHeight } from '@/lib/terrain'
import { RoadDesks, type FindBlob } from '../road-desks'
import { contourLines, type ContourLine, type ContourUnit } from './contour-lines'
import { layHeights } from './lay-heights'
import { steepestOf, type SteepestGrades } from './steepest-grades'
import { shadePicture, type ShadePicture } from './shade-picture'
import { TerrainGrids, type TerrainAsk } from './terrain-grids'

export type GroundDrawing = { readonly shade: ShadePicture; readonly lines: readonly ContourLine[]; readonly interval: number; readonly unit: ContourUnit }

/** What the worker that knows the ground offers. */
export type GroundService = {
  /** What the map draws under the roads. */
  draw(terrain: TerrainAsk, unit: ContourUnit): Promise<GroundDrawing | Issue>
  /** Heights at places, in their order; undefined where the data has none. */
  heights(terrain: TerrainAsk, points: readonly Point[]): Promise<(GroundHeight | undefined)[] | Issue>
  /** The steepest stretches of a way, driven in its order. */
  grades(terrain: TerrainAsk, path: readonly Point[]): Promise<SteepestGrades | Issue>
  /** Ground under hose lays; nothing where the elevation cannot be read. */
  layHeights(district: District, lays: readonly Lay[]): Promise<GroundHeights[]>
}

export function groundService(findBlob: FindBlob): GroundService {
  const grids = new TerrainGrids(findBlob)
  const roads = new RoadDesks(findBlob)
  return {
    async draw(terrain, unit) {
      const grid = await grids.gridFor(terrain)
      return 'code' in grid ? grid : { shade: shadePicture(grid), unit, ...contourLines(grid, unit) }
    },
    async heights(terrain, points) {
      const grid = await grids.gridFor(terrain)
      return 'code' in grid ? grid : points.map((point) => findHeight(grid, point))
    },
    async grades(terrain, path) {
      const grid = await grids.gridFor(terrain)
      return 'code' in grid ? grid : steepestOf(grid, path)
    },
    layHeights: (district, lays) => layHeights(grids, async (one) => (await roads.deskFor(one)).desk, district, lays),
  }
}
