import { isBlocking, type Issue } from '../../issue'
import { findApparatus, type Bundle, type EditBody } from '../../plan'
import { dependableOf } from '../dependable-gain'
import { arrival, defaults } from '../../supply'
import type { Progress } from '../progress'
import type { ResolveWays } from '../ways-with-closure'
import { greedySet } from './greedy-set'
import type { RequestAsk } from './request-ask'
import { MOST_TENDERS, SetDesk, type TenderSet } from './set-desk'
import { smallestSet } from './smallest-set'
import { idsOf, tradeOff, type TradeOffPoint } from './trade-off'
import { requestTasks } from './request-ask'
import { tendersToMeet, type TendersToMeet } from '../tenders-to-meet'

/** One unit to ask for: from where, to where, and when it is there. */
export type RequestLine = {
  readonly apparatusId: string
  readonly stationId: string | undefined
  readonly isMutualAid: boolean
  readonly task: 'fillPumper' | 'dumpPumper' | 'layPumper' | 'tender'
  readonly siteId: string
  /** At its place, after dispatch. */
  readonly arrive_s: number
  /** It has no station: the time is one that is assumed. */
  readonly isArrivalAssumed?: true
  /** Set up and pumping, after dispatch; absent for a tender. */
  readonly ready_s?: number
  /** Setting up once it can begin; the rest from arrival to `ready_s` is waiting. Absent where it is part of a hose lay. */
  readonly setUp_s?: number
  readonly isPlanned: boolean
}

export type RequestList = {
  readonly ask: RequestAsk
  /** `met`: the set meets what was asked. `late`: the flow is met, but only later. `short`: no set of tenders carries it with these sites. */
  readonly outcome: 'met' | 'late' | 'short'
  readonly lines: readonly RequestLine[]
  readonly tenderIds: readonly string[]
  /** Expected: with every number as it stands. */
  readonly flow_gpm: number
  /** Of the set, by the nights of any plan; null: nothing to say. */
  readonly dependable_gpm: number | null
  /** When the asked flow is there; null: never. */
  readonly met_s: number | null
  /** The set was found by looking at all that could be smaller. */
  readonly isExact: boolean
  readonly curve: readonly TradeOffPoint[]
  /** Makes the plan's tenders those of the list. */
  readonly edits: readonly EditBody[]
  readonly simulatedCount: number
  /** `short`: how many more tenders, beyond all of the district's, would carry the flow. */
  readonly beyond?: TendersToMeet
}

/** Up to this many tenders every set that could be smaller is looked at. */
const MOST_EXACT = 12

/**
 * Whom to ask: the smallest set of tenders, of home and mutual-aid stations, that meets a flow by a time at the plan's own
 * sites and with its pumpers, which are on the list with them.
 *
 * @param resolve finds the ways of tenders the plan does not send yet
 * @returns a generator whose result is the list; an issue when the plan's sites themselves give no answer
 */
export function* requestList(bundle: Bundle, ask: RequestAsk, resolve: ResolveWays): Generator<Progress, RequestList | Issue[]> {
  const tenderCount = requestTasks(bundle).length
  if (tenderCount === 0 || tenderCount > MOST_TENDERS)
    return [{ code: tenderCount === 0 ? 'request-no-tender' : 'request-too-many', severity: 'block', subjectIds: [bundle.plan.id], values: { count: tenderCount, limit: MOST_TENDERS } }]
  const desk = new SetDesk(bundle, ask, resolve)
  const whole = desk.compiled(desk.whole)
  if (isBlocking(whole.issues)) return whole.issues.filter(({ severity }) => severity === 'block')

  const isExact = tenderCount <= MOST_EXACT
  const search = isExact ? smallestSet(desk) : greedySet(desk)
  const guessed = isExact ? 2 ** tenderCount / 2 : 40 * tenderCount
  const found = yield* halfOf(search, 0, guessed)
  const curve = yield* halfOf(tradeOff(desk), 0.5, guessed)
  const late = curve.filter(({ met_s }) => met_s !== null).sort((a, b) => a.tenderCount - b.tenderCount)[0]
  const most = curve.toSorted((a, b) => b.flow_gpm - a.flow_gpm || a.tenderCount - b.tenderCount)[0]
  const fallback = (late?.metIds ?? most?.flowIds ?? []).reduce((set, id) => set | (1 << desk.ids.indexOf(id)), 0)
  const set = found ?? fallback
  const beyond = found === undefined && !late ? yield* tendersToMeet(whole.bundle, ask.flow_gpm, resolve, whole) : undefined
  const answer = desk.answer(set)
  return {
    ask, outcome: found !== undefined ? 'met' : late ? 'late' : 'short',
    lines: linesOf(desk, bundle, set), tenderIds: idsOf(desk, set),
    flow_gpm: answer.flow_gpm, dependable_gpm: dependableOf(desk.compiled(set)) ?? null, met_s: answer.met_s ?? null, isExact, curve,
    edits: editsTo(desk, bundle, set), simulatedCount: desk.simulatedCount, ...(beyond && { beyond }),
  }
}

/** Work whose length is only guessed, as half of the whole: it nears its end without reaching it too early. */
function* halfOf<R>(work: Generator<void, R>, fromShare: number, guessedCount: number): Generator<Progress, R> {
  for (let stepCount = 1; ; stepCount++) {
    const step = work.next()
    if (step.done) return step.value
    yield { doneShare: fromShare + 0.5 * (stepCount / (stepCount + guessedCount / 4)) }
  }
}

/** Pumpers first, then tenders by when they are there. */
function linesOf(desk: SetDesk, bundle: Bundle, set: TenderSet): RequestLine[] {
  const { fills, dumps, lays, tenders, ledger, ways } = desk.compiled(set)
  const planned = new Set(desk.tasks.flatMap(({ tender, isPlanned }) => (isPlanned ? [tender.id as string] : [])))
  const line = (apparatusId: string | undefined, task: RequestLine['task'], siteId: string, known: { readonly ready_s: number; readonly setUp_s?: number } | { readonly arrive_s: number }): RequestLine[] => {
    const unit = findApparatus(bundle, apparatusId)
    if (!unit) return []
    const station = bundle.district.stations.find(({ id }) => id === unit.stationId)
    const reached = 'arrive_s' in known ? known : arrival(bundle, ledger, ways, unit, siteId)
    // No way to its place blocks the answer, so a list has none such.
    if ('code' in reached) return []
    return [{
      apparatusId: unit.id, stationId: station?.id, isMutualAid: Boolean(unit.mutualAid ?? station?.mutualAid),
      task, siteId, ...known, arrive_s: reached.arrive_s, ...(!station && { isArrivalAssumed: true as const }), isPlanned: task !== 'tender' || planned.has(unit.id),
    }]
  }
  return [
    ...fills.flatMap(({ site, ready_s }) => line(site.pumperId, 'fillPumper', site.id, { ready_s, setUp_s: site.setUp_s ?? defaults.fillSetUp_s.value })),
    ...dumps.flatMap(({ site, spec }) => line(site.pumperId, 'dumpPumper', site.id, { ready_s: spec.pumpReady_s, setUp_s: site.pumpSetUp_s ?? defaults.pumpSetUp_s.value })),
    ...lays.flatMap(({ lay, pumperIds, ready_s }) => pumperIds.flatMap((id) => line(id, 'layPumper', lay.id, { ready_s }))),
    ...tenders.flatMap(({ tender, dumpSiteId, spec }) => line(tender.id, 'tender', dumpSiteId, { arrive_s: spec.arrive_s ?? 0 })).sort((a, b) => a.arrive_s - b.arrive_s),
  ]
}

function editsTo(desk: SetDesk, { plan }: Bundle, set: TenderSet): EditBody[] {
  const wanted = new Set(idsOf(desk, set))
  return [
    ...plan.tenders.flatMap(({ id, tenderId }): EditBody[] => (wanted.has(tenderId) ? [] : [{ kind: 'removeItem', collection: 'tenders', id }])),
    ...desk.tasks.flatMap(({ tender, task, isPlanned }): EditBody[] => (!isPlanned && wanted.has(tender.id) ? [{ kind: 'addItem', collection: 'tenders', item: task }] : [])),
  ]
}
