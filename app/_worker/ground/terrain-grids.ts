import { issue, type Issue } from '@/lib/issue'
import type { TerrainSet } from '@/lib/plan'
import { decodeHeightGrid, type HeightGrid } from '@/lib/terrain'
import { RecentMap } from '../recent-map'
import type { FindBlob } from '../road-desks'

/** What must be known of a district's elevation to read it: its bytes, and how far somebody says its heights may be off. */
export type TerrainAsk = Pick<TerrainSet, 'hash' | 'verticalDoubt_ft' | 'doubtBasis'>

/** Heights of districts: each blob is fetched and read once. What the district states of their doubt stands before what the blob says. */
export class TerrainGrids {
  readonly #findBlob: FindBlob
  readonly #grids = new RecentMap<HeightGrid>(1)

  constructor(findBlob: FindBlob) {
    this.#findBlob = findBlob
  }

  /** @returns the grid, or `terrain-missing`, `terrain-unreachable`, `terrain-unreadable` (warn) */
  async gridFor({ hash, verticalDoubt_ft, doubtBasis }: TerrainAsk): Promise<HeightGrid | Issue> {
    const grid = this.#grids.find(hash) ?? (await this.#load(hash))
    if ('code' in grid) return grid
    return { ...grid, verticalDoubt_ft: verticalDoubt_ft ?? grid.verticalDoubt_ft, doubtBasis: doubtBasis ?? grid.doubtBasis }
  }

  async #load(hash: string): Promise<HeightGrid | Issue> {
    const bytes = await this.#findBlob(hash).catch((error: unknown) => issue('terrain-unreachable', 'warn', [], { reason: String(error) }))
    if (bytes === undefined) return issue('terrain-missing', 'warn', [], { hash: hash.slice(0, 12) })
    if (!(bytes instanceof Uint8Array)) return bytes
    const grid = decodeHeightGrid(bytes)
    if ('code' in grid) return { ...grid, severity: 'warn' }
    this.#grids.put(hash, grid)
    return grid
  }
}
