import { adviseOn, baselineOf, dependableGains, requestList, type Advice, type DependableGains, type Progress, type RequestAsk, type RequestList, type ResolveWays } from '@/lib/advise'
import type { Issue } from '@/lib/issue'
import type { Bundle, Leg, NoLeg } from '@/lib/plan'
import { driveWork } from './drive-work'
import { RecentMap } from './recent-map'
import { RoadDesks, type FindBlob } from './road-desks'
import { wayResolver } from './way-resolver'

/** What comes while advice is worked out: how far it is, the advice, then what it does to the dependable flow. */
export type AdvicePart =
  | { kind: 'progress'; stage: 'trying' | 'doubting'; doneShare: number }
  | { kind: 'advice'; advice: Advice | undefined }
  | { kind: 'dependable'; gains: DependableGains }

/** What the adviser's worker offers. A new question, or `stop`, ends the one under way: it is answered with false or undefined. */
export type AdviceService = {
  advise(bundle: Bundle, onPart: (part: AdvicePart) => void): Promise<boolean>
  request(bundle: Bundle, ask: RequestAsk, onProgress: (doneShare: number) => void): Promise<RequestList | Issue[] | undefined>
  stop(): Promise<void>
}

const LEGS_KEPT = 6000
/** Sets of road notes at hand: the district's own, and those with a road closed. */
const DESKS_KEPT = 4
/** Changes whose dependable flow is worked out. */
const DOUBTED_COUNT = 8

/**
 * Advice behind messages: work in stints, between which a newer question or a stop is taken up.
 *
 * @param turn lets messages that have come in be taken up first
 * @param now  a clock in milliseconds
 */
export function adviceService(findBlob: FindBlob, turn: () => Promise<void>, now: () => number): AdviceService {
  const desks = new RoadDesks(findBlob, DESKS_KEPT)
  const legs = new RecentMap<Leg | NoLeg>(LEGS_KEPT)
  let newest = 0

  const drive = <P extends Progress, R>(own: number, work: Generator<P, R>, onProgress: (progress: P) => void): Promise<{ result: R } | undefined> =>
    driveWork(work, { isCurrent: () => own === newest, turn, now, onProgress })
  const resolver = (bundle: Bundle): Promise<ResolveWays> => wayResolver(desks, legs, bundle)

  return {
    async advise(bundle, onPart) {
      const own = (newest += 1)
      const resolve = await resolver(bundle)
      if (own !== newest) return false
      const base = baselineOf(bundle, resolve)
      if (!base) {
        onPart({ kind: 'advice', advice: undefined })
        return true
      }
      const tried = await drive(own, adviseOn(base, resolve), ({ doneShare }) => { onPart({ kind: 'progress', stage: 'trying', doneShare }) })
      if (!tried) return false
      onPart({ kind: 'advice', advice: tried.result })
      const { helpful, unproven } = tried.result.ranked
      const doubted = dependableGains(base, [...helpful, ...unproven].slice(0, DOUBTED_COUNT), resolve)
      const done = await drive(own, doubted, ({ doneShare, soFar }) => {
        onPart({ kind: 'progress', stage: 'doubting', doneShare })
        onPart({ kind: 'dependable', gains: soFar })
      })
      if (done) onPart({ kind: 'dependable', gains: done.result })
      return done !== undefined
    },
    async request(bundle, ask, onProgress) {
      const own = (newest += 1)
      const resolve = await resolver(bundle)
      if (own !== newest) return undefined
      const done = await drive(own, requestList(bundle, ask, resolve), ({ doneShare }) => { onProgress(doneShare) })
      return done?.result
    },
    stop() {
      newest += 1
      return Promise.resolve()
    },
  }
}
