import { expose } from 'comlink'
import { equipmentOf, hoseOrWheels, supplyHose_ft, type Candidate, type HoseOrWheels } from '@/lib/advise/hose-or-wheels'
import type { Bundle, Leg, NoLeg } from '@/lib/plan'
import { defaults, FIRE_GROUND, findPlace, wayDistances_ft } from '@/lib/supply'
import { findBlob } from '../_client/blobs'
import { driveWork } from '../_worker/drive-work'
import { heightsUnder } from '../_worker/ground/lay-heights'
import { TerrainGrids } from '../_worker/ground/terrain-grids'
import { RecentMap } from '../_worker/recent-map'
import { RoadDesks } from '../_worker/road-desks'
import { wayResolver } from '../_worker/way-resolver'
import { layBegins } from './lay-ends'
import { roadWay } from './road-way'

export type WheelsAsk = { readonly bundle: Bundle; readonly fromIds: readonly string[]; readonly leftOut: readonly string[] }

export type WheelsService = {
  /** A new question, or `stop`, ends the one under way: it is answered with undefined. */
  compare(ask: WheelsAsk, onProgress: (doneShare: number) => void): Promise<HoseOrWheels | undefined>
  stop(): Promise<void>
}

const LEGS_KEPT = 2000
const roads = new RoadDesks(findBlob)
const terrain = new TerrainGrids(findBlob)
const legs = new RecentMap<Leg | NoLeg>(LEGS_KEPT)
let newest = 0

const service: WheelsService = {
  async compare({ bundle, fromIds, leftOut }, onProgress) {
    const own = (newest += 1)
    const { district } = bundle
    const fire = findPlace(bundle, FIRE_GROUND)
    const { desk } = await roads.deskFor(district)
    const grid = district.terrain && (await terrain.gridFor(district.terrain))
    const ways = await wayResolver(roads, legs, bundle)
    if (own !== newest || !fire) return undefined
    // Where the hose at hand does not reach along the roads it may still reach over open ground.
    const hose_ft = supplyHose_ft(equipmentOf(bundle, new Set(leftOut)).hose)
    const candidates = layBegins(district).filter(({ id }) => fromIds.includes(id)).map(({ id, name, point }): Candidate => {
      const found = desk && roadWay((ask) => desk.find(ask), { from: point, to: fire, via: [] })
      const road = found && !('code' in found) ? found : undefined
      const reaches = road && (wayDistances_ft(road).at(-1) ?? 0) * defaults.layFactor.value <= hose_ft
      return { fromId: id, name, point, ...(reaches ? { way: road } : { way: [point, fire], isAcross: true, ...(road && { road }) }) }
    })
    const resolve = (asked: Bundle): Bundle => {
      const whole = ways(asked)
      if (!grid || 'code' in grid) return whole
      return { ...whole, layHeights: (asked.plan.hoseLays ?? []).map((lay) => heightsUnder(grid, district, lay)) }
    }
    const done = await driveWork(hoseOrWheels(bundle, candidates, resolve, new Set(leftOut)), {
      isCurrent: () => own === newest, turn: () => new Promise((next) => setTimeout(next, 0)), now: () => performance.now(), onProgress: ({ doneShare }) => { onProgress(doneShare) },
    })
    return done?.result
  },
  stop() {
    newest += 1
    return Promise.resolve()
  },
}

expose(service)
