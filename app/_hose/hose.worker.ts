import { expose } from 'comlink'
import type { Point } from '@/lib/geo'
import { issue, type Issue } from '@/lib/issue'
import { findApparatus, type District, type Plan } from '@/lib/plan'
import { findCrossings, type RoadCrossing } from '@/lib/roads'
import { answerLay, type HoseLayAnswer } from '@/lib/supply'
import { findBlob } from '../_client/blobs'
import { heightsUnder } from '../_worker/ground/lay-heights'
import { TerrainGrids } from '../_worker/ground/terrain-grids'
import { RoadDesks } from '../_worker/road-desks'
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
  /** Where a lay crosses roads; nothing where these are not known. */
  crossings(ask: HoseAsk): Promise<RoadCrossing[]>
}

const terrain = new TerrainGrids(findBlob)
const roads = new RoadDesks(findBlob)

const failureOf = ({ code }: Issue): TerrainFailure =>
  code === 'terrain-missing' ? 'missing' : code === 'terrain-unreachable' ? 'unreachable' : 'unreadable'

const service: HoseService = {
  async study({ district, plan, layId }) {
    const lay = plan.hoseLays?.find(({ id }) => id === layId)
    if (!lay) return undefined
    const grid = district.terrain && (await terrain.gridFor(district.terrain))
    const failed = grid && 'code' in grid ? grid : undefined
    const desk = lay.standsOnRoads ? (await roads.deskFor(district)).desk : undefined
    const answer = answerLay({ district, plan }, lay, heightsUnder(grid && !('code' in grid) ? grid : undefined, district, lay, desk))
    return { answer, ...(failed && { terrainFailure: failureOf(failed) }) }
  },
  async crossings({ district, plan, layId }) {
    const lay = plan.hoseLays?.find(({ id }) => id === layId)
    const { desk } = await roads.deskFor(district)
    return lay && desk ? findCrossings(desk.graph, lay.points) : []
  },
  async alongRoads({ district, plan, layId }) {
    const lay = plan.hoseLays?.find(({ id }) => id === layId)
    const from = lay?.points[0], to = lay?.points.at(-1)
    const { desk } = await roads.deskFor(district)
    if (!desk || !from || !to) return issue('lay-no-roads', 'warn', lay ? [lay.id] : [])
    const { full_lb, height_ft, width_ft } = findApparatus({ district }, lay.pumperIds[0]) ?? {}
    return roadWay((ask) => desk.find(ask), {
      from, to, via: [], ...(full_lb !== undefined && { gross_lb: full_lb }), ...(height_ft !== undefined && { height_ft }), ...(width_ft !== undefined && { width_ft }),
    })
  },
}

expose(service)
