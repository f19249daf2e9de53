import type { Trial, Baseline } from '../trial'
import { figuresOfSpec } from '../figures'
import { pumpCapacity_gpm } from '../../supply'
import type { ResolveWays } from '../ways-with-closure'
import type { Stop, StopKind } from './stop'
import { stopsOf } from './stops-of'
import { momentsOf, timeToDry_s, type Moments } from './time-to-dry'

/** What happens when one part stops in the middle of the night. */
export type StopOutcome = {
  readonly id: string
  readonly kind: StopKind
  readonly subjectIds: readonly string[]
  readonly values: Stop['values']
  /** From the worst moment to the fire ground short of the flow; null: it is not, for as long as supply must last. */
  readonly dry_s: number | null
  /** What can be held afterwards with all else as it is. */
  readonly flowAfter_gpm: number
  /** Of what the whole plan holds; negative: it holds more without this part, for queues can bite. */
  readonly lost_gpm: number
  /** The unused pumper that would hold most in its place, and what: once it has come. */
  readonly spare?: { readonly apparatusId: string; readonly flow_gpm: number; readonly ready_s: number | null }
}

export type StopReport = {
  /** The flow at the fire ground while it stops: the needed flow, or what the plan sustains, rounded down to 5 gpm, if that is less. */
  readonly flow_gpm: number
  /** What the whole plan holds; losses are counted from it. */
  readonly held_gpm: number
  /** Worst first. */
  readonly outcomes: readonly StopOutcome[]
  readonly worst: StopOutcome | undefined
  /** All water comes through one draft: a second pumper is recommended there. */
  readonly onlyDraftSiteId?: string
}

/** What a plan sustains is promised rounded down to this, so that the last tenth of a gallon does not decide when it is dry. */
const PROMISED_STEP_GPM = 5

/**
 * For every pumper, tender, bay, position and road: how long the fire ground still has water when it stops, and
 * what can be held afterwards.
 *
 * @param trials of other pumpers, from which the best to stand by is taken
 */
export function ifStops({ bundle, compiled, figures }: Baseline, trials: readonly Trial[], resolve: ResolveWays): StopReport {
  const { spec } = compiled
  const needed_gpm = compiled.demand.needed_gpm ?? Infinity
  const flow_gpm = Math.min(Math.floor(figures.flow_gpm / PROMISED_STEP_GPM) * PROMISED_STEP_GPM, needed_gpm)
  const moments = spec && flow_gpm > 0 ? momentsOf(spec, flow_gpm) : undefined
  const outcomes = stopsOf(bundle, compiled, resolve)
    .map((stop) => outcomeOf(stop, moments, figures.flow_gpm, trials))
    .sort((a, b) => a.flowAfter_gpm - b.flowAfter_gpm || (a.dry_s ?? Infinity) - (b.dry_s ?? Infinity) || (a.id < b.id ? -1 : 1))
  const [site, ...more] = bundle.plan.fillSites
  return {
    flow_gpm, held_gpm: figures.flow_gpm, outcomes, worst: outcomes[0],
    ...(site?.pumperId && more.length === 0 && compiled.lays.length === 0 && pumpCapacity_gpm(compiled) > 0 && { onlyDraftSiteId: site.id }),
  }
}

function outcomeOf(stop: Stop, moments: Moments | undefined, before_gpm: number, trials: readonly Trial[]): StopOutcome {
  const flowAfter_gpm = stop.after ? figuresOfSpec(stop.after, stop.pump_gpm).flow_gpm : 0
  const dry_s = stop.isAtOnce ? 0 : ((moments && timeToDry_s(moments, stop.onward)) ?? null)
  const spare = findSpare(stop, trials)
  return {
    id: stop.id, kind: stop.kind, subjectIds: stop.subjectIds, values: stop.values,
    dry_s, flowAfter_gpm, lost_gpm: before_gpm - flowAfter_gpm, ...(spare && { spare }),
  }
}

function findSpare({ kind, subjectIds }: Stop, trials: readonly Trial[]): StopOutcome['spare'] {
  if (kind !== 'fillPumper' && kind !== 'dumpPumper') return undefined
  const siteId = subjectIds[1]
  const [best] = trials
    .filter(({ candidate }) => candidate.kind === kind && candidate.comes?.toId === siteId)
    .sort((a, b) => b.after.flow_gpm - a.after.flow_gpm || a.work_s - b.work_s || (a.candidate.id < b.candidate.id ? -1 : 1))
  return best?.candidate.comes && best.after.flow_gpm > 0
    ? { apparatusId: best.candidate.comes.apparatusId, flow_gpm: best.after.flow_gpm, ready_s: best.after.ready_s }
    : undefined
}
