import type { Bundle } from '../plan'
import { limitingLinkOf, type Link } from '../supply'
import { candidatesOf } from './candidates/candidates'
import { ifStops, type StopReport } from './stops/if-stops'
import type { Progress } from './progress'
import { rankTrials, type Ranked } from './rank'
import { tendersToMeet, type TendersToMeet } from './tenders-to-meet'
import { baselineOf, changedPlan, isTrial, tryCandidate, type Baseline, type NoTrial, type Trial } from './trial'
import type { ResolveWays } from './ways-with-closure'

/** What would help, and what happens if something stops. */
export type Advice = {
  readonly base: Baseline['figures']
  readonly needed_gpm: number | undefined
  readonly ranked: Ranked
  readonly untried: readonly NoTrial[]
  readonly stops: StopReport
  readonly triedCount: number
  /** What limits the plan as it is: that of its headline. Null: no part by itself. */
  readonly limit: Link | null
  /** What limits it with each change that would help, by the change's id. */
  readonly limits: ReadonlyMap<string, Link | null>
  /** Where the need is not met and no single change meets it: how many more tenders would. */
  readonly toMeet?: TendersToMeet
}

/**
 * Advice for a plan: every change that its district's equipment allows, simulated and ranked, and what
 * is left when each part stops. The given bundle is not changed.
 *
 * @param resolve finds the ways of changed plans
 * @returns a generator: its yields are progress, its result the advice, or undefined when something blocks the plan's own answer
 */
export function* advise(given: Bundle, resolve: ResolveWays): Generator<Progress, Advice | undefined> {
  const base = baselineOf(given, resolve)
  return base && (yield* adviseOn(base, resolve))
}

/** Advice for a plan that is worked out already. */
export function* adviseOn(base: Baseline, resolve: ResolveWays): Generator<Progress, Advice> {
  yield { doneShare: 0 }
  const candidates = candidatesOf(base.bundle, resolve)
  const trials: Trial[] = []
  const untried: NoTrial[] = []
  // Stops take about as long as a fifth of the changes.
  const whole = candidates.length * 1.2 + 1
  for (const [index, candidate] of candidates.entries()) {
    const outcome = tryCandidate(base, candidate, resolve)
    if (isTrial(outcome)) trials.push(outcome)
    else untried.push(outcome)
    yield { doneShare: (index + 1) / whole }
  }
  const stops = ifStops(base, trials, resolve)
  const { needed_gpm } = base.compiled.demand
  const isOpen = needed_gpm !== undefined && base.figures.flow_gpm < needed_gpm && !trials.some(({ meetsNeed }) => meetsNeed)
  const toMeet = isOpen ? yield* asProgress(tendersToMeet(base.bundle, needed_gpm, resolve, base.compiled), 1 - 0.1 / whole) : undefined
  const ranked = rankTrials(trials)
  const limits = yield* asProgress(limitsWith(base, [...ranked.helpful, ...ranked.unproven], resolve), 1 - 0.05 / whole)
  const limit = limitingLinkOf(base.compiled, base.figures.flow_gpm)
  return { base: base.figures, needed_gpm, ranked, untried, stops, triedCount: candidates.length, limit, limits, ...(toMeet && { toMeet }) }
}

/** What limits the plan with each change, worked out as for the plan itself. */
function* limitsWith(base: Baseline, trials: readonly Trial[], resolve: ResolveWays): Generator<Progress, Map<string, Link | null>> {
  const limits = new Map<string, Link | null>()
  for (const [index, { candidate, after }] of trials.entries()) {
    const changed = changedPlan(base, candidate, resolve)
    if (!('because' in changed)) limits.set(candidate.id, limitingLinkOf(changed, after.flow_gpm))
    yield { doneShare: (index + 1) / trials.length }
  }
  return limits
}

/** The end of the work, whose own length is not known: progress stays where it is, and it may be stopped in between. */
function* asProgress<R>(work: Generator<Progress, R>, doneShare: number): Generator<Progress, R> {
  for (;;) {
    const step = work.next()
    if (step.done) return step.value
    yield { doneShare }
  }
}
