import type { Change, EditBody, Bundle, Fact, Leg, NoLeg } from '@/lib/plan'
import { bestAnswers, changeOfEdits, roadClosures, type InjectAnswer, type RoadClosure } from '@/lib/exercise'
import type { Point } from '@/lib/geo'
import { driveWork } from './drive-work'
import { RecentMap } from './recent-map'
import { RoadDesks, type FindBlob } from './road-desks'
import { wayResolver } from './way-resolver'

type Closed = readonly { readonly id: string; readonly point: Point }[]

/** What the worker of an exercise offers: all that needs the roads of its district, or takes long. */
export type RefereeService = {
  /** Roads of the plan that could be closed beside those that are, with the ways round; none where the roads are not at hand. */
  closures(bundle: Bundle, closed: Closed): Promise<RoadClosure[]>
  /** Edits of the plan as a change of the exercise, with the ways that it drives then; undefined where nobody knows them. */
  change(bundle: Bundle, edits: readonly EditBody[], closed: Closed): Promise<Extract<Change, { kind: 'plan' }> | undefined>
  /** For each inject the best that could have been decided; undefined once it is stopped or another is asked for. */
  best(bundle: Bundle, facts: readonly Fact[], to_s: number, onProgress: (doneShare: number) => void): Promise<InjectAnswer[] | undefined>
  stop(): Promise<void>
}

const LEGS_KEPT = 6000
/** Sets of road notes at hand: the district's own, and those with a road closed. */
const DESKS_KEPT = 4

/**
 * @param turn lets messages that have come in be taken up first
 * @param now  a clock in milliseconds
 */
export function refereeService(findBlob: FindBlob, turn: () => Promise<void>, now: () => number): RefereeService {
  const desks = new RoadDesks(findBlob, DESKS_KEPT)
  const legs = new RecentMap<Leg | NoLeg>(LEGS_KEPT)
  let newest = 0
  return {
    async closures(bundle, closed) {
      return roadClosures(bundle, await wayResolver(desks, legs, bundle), closed)
    },
    async change(bundle, edits, closed) {
      return changeOfEdits(bundle, edits, { closed }, await wayResolver(desks, legs, bundle))
    },
    async best(bundle, facts, to_s, onProgress) {
      const own = (newest += 1)
      const resolve = await wayResolver(desks, legs, bundle)
      const isCurrent = () => own === newest
      const done = isCurrent() ? await driveWork(bestAnswers(bundle, facts, to_s, resolve), { isCurrent, turn, now, onProgress: ({ doneShare }) => { onProgress(doneShare) } }) : undefined
      return done?.result
    },
    stop() {
      newest += 1
      return Promise.resolve()
    },
  }
}
