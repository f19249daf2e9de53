import { expose } from 'comlink'
import type { Point } from '@/lib/geo'
import { issue, type Issue } from '@/lib/issue'
import { findApparatus, type District, type Plan } from '@/lib/plan'
import { decodeRoadGraph, type RoadGraph } from '@/lib/roads'
import { answerLay, type HoseLayAnswer } from '@/lib/supply'
import { decodeHeightGrid, profileAlong, type HeightGrid } from '@/lib/terrain'
import { findBlob } from '../_client/blobs'
import { roadWay } from './road-way'

export type HoseAsk = { readonly district: District; readonly plan: Plan; readonly layId: string }

/** Why the district's elevation could not be read, where it has some. */
export type TerrainFailure = 'missing' | 'unreadable' | 'unreachable'

export type HoseStudy = { readonly answer: HoseLayAnswer; readonly terrainFailure?: TerrainFailure }

export type HoseService = {
  /** @returns undefined when the plan has no such lay */
  study(ask: HoseAsk): Promise<HoseStudy | undefined>
  /** The way of a lay along roads its source pumper can drive, or why there is none. */
  alongRoads(ask: HoseAsk): Promise<Point[] | Issue>
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

let keptRoads: { hash: string; graph: RoadGraph } | undefined

async function loadRoads(hash: string): Promise<RoadGraph | undefined> {
  if (keptRoads?.hash === hash) return keptRoads.graph
  const bytes = await findBlob(hash)
  const graph = bytes && decodeRoadGraph(bytes)
  if (!graph || 'code' in graph) return undefined
  keptRoads = { hash, graph }
  return graph
}

const service: HoseService = {
  async study({ district, plan, layId }) {
    const lay = plan.hoseLays?.find(({ id }) => id === layId)
    if (!lay) return undefined
    const grid = district.terrain ? await load(district.terrain.hash) : undefined
    if (typeof grid === 'string') return { answer: answerLay({ district, plan }, lay), terrainFailure: grid }
    return { answer: answerLay({ district, plan }, lay, grid && profileAlong(grid, lay.points, STEP_FT)) }
  },
  async alongRoads({ district, plan, layId }) {
    const lay = plan.hoseLays?.find(({ id }) => id === layId)
    const from = lay?.points[0], to = lay?.points.at(-1)
    const graph = district.roads && (await loadRoads(district.roads.hash))
    if (!graph || !from || !to) return issue('lay-no-roads', 'warn', lay ? [lay.id] : [])
    const unit = findApparatus({ district }, lay.pumperIds[0])
    return roadWay(graph, district.roadNotes, {
      ...(unit?.full_lb !== undefined && { gross_lb: unit.full_lb }), ...(unit?.height_ft !== undefined && { height_ft: unit.height_ft }), ...(unit?.width_ft !== undefined && { width_ft: unit.width_ft }),
    }, from, to)
  },
}

expose(service)
