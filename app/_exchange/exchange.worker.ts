import { expose } from 'comlink'
import type { DrivenWay, FoundFile } from '@/lib/exchange'
import { readPlaces } from '@/lib/exchange/read-places'
import type { Issue } from '@/lib/issue'
import type { Bundle, Leg, NoLeg } from '@/lib/plan'
import { findBlob } from '../_client/blobs'
import { RecentMap } from '../_worker/recent-map'
import { RoadDesks } from '../_worker/road-desks'
import { wayResolver } from '../_worker/way-resolver'
import { drivenWays } from './driven-ways'
import { unzipKml } from './unzip-kml'

/** What the worker of the exchange offers. */
export type ExchangeService = {
  read(bytes: Uint8Array, onProgress: (doneShare: number) => void): Promise<FoundFile | Issue>
  /** Ways that each plan drives over its district's roads, by the plan's id. */
  ways(bundles: readonly Bundle[]): Promise<ReadonlyMap<string, readonly DrivenWay[]>>
}

const LEGS_KEPT = 5000

const service: ExchangeService = {
  read: (bytes, onProgress) => readPlaces(bytes, { unzipKml, onProgress }),
  async ways(bundles) {
    const found = new Map<string, readonly DrivenWay[]>()
    const desks = new RoadDesks(findBlob)
    const legs = new RecentMap<Leg | NoLeg>(LEGS_KEPT)
    for (const bundle of bundles) found.set(bundle.plan.id, drivenWays((await wayResolver(desks, legs, bundle))(bundle)))
    return found
  },
}

expose(service)
