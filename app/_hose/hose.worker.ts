import { expose } from 'comlink'
import type { District, Plan } from '@/lib/plan'
import { answerLay, type HoseLayAnswer } from '@/lib/supply'
import { decodeHeightGrid, profileAlong, type HeightGrid } from '@/lib/terrain'
import { findBlob } from '../_client/blobs'

export type HoseAsk = { readonly district: District; readonly plan: Plan; readonly layId: string }

/** Why the district's elevation could not be read, where it has some. */
export type TerrainFailure = 'missing' | 'unreadable' | 'unreachable'

export type HoseStudy = { readonly answer: HoseLayAnswer; readonly terrainFailure?: TerrainFailure }

export type HoseService = {
  /** @returns undefined when the plan has no such lay */
  study(ask: HoseAsk): Promise<HoseStudy | undefined>
}

/** Closer than any sample of the usual elevation data; corners of the way count besides. */
const STEP_FT = 50

let kept: { hash: string; grid: HeightGrid } | undefined

async function load(hash: string): Promise<HeightGrid | TerrainFailure> {
  if (kept?.hash === hash) return kept.grid
  try {
    const bytes = await findBlob(hash)
    if (!bytes) return 'missing'
    const grid = decodeHeightGrid(bytes)
    if ('code' in grid) return 'unreadable'
    kept = { hash, grid }
    return grid
  } catch {
    return 'unreachable'
  }
}

const service: HoseService = {
  async study({ district, plan, layId }) {
    const lay = plan.hoseLays?.find(({ id }) => id === layId)
    if (!lay) return undefined
    const grid = district.terrain ? await load(district.terrain.hash) : undefined
    if (typeof grid === 'string') return { answer: answerLay({ district, plan }, lay), terrainFailure: grid }
    return { answer: answerLay({ district, plan }, lay, grid && profileAlong(grid, lay.points, STEP_FT)) }
  },
}

expose(service)
