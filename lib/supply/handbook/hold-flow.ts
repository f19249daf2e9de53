import { compileShuttle, recordShuttle, type ShuttleRecord } from '../../shuttle'
import type { CompiledPlan } from '../compile-plan'

/** A flow asked for from a moment on; the last one lasts to the end. Seconds from dispatch. */
export type AskedFlow = { readonly from_s: number; readonly flow_gpm: number }

/** Why a flow is not there. */
export type ShortCause = 'blocked' | 'no-engine' | 'engine-not-there' | 'engine-empty' | 'never-ready' | 'pump' | 'source-empty' | 'draft-lost' | 'not-brought'

export type HeldAsk =
  | { readonly isHeld: true }
  | { readonly isHeld: false; readonly short_s: number; readonly why: ShortCause; readonly subjectIds: readonly string[] }

/** Rounding of a flow shared among sites. */
const AS_GOOD_AS_GPM = 1e-6
/** Between supply ready early or late and the end: the run is never cut short. */
const MARGIN_S = 600

/**
 * Whether the plan gives what is asked, from the first moment asked to a stated end, without a break.
 *
 * The first-due engine's tank counts until it is empty, then the portable tanks, as in every run; nothing is drawn
 * before the first moment asked. Stored water may be used up: it is asked for a stated time.
 *
 * @param asked  at least one, sorted by time
 * @param end_s  after the last stage begins
 * @returns the first moment it is short, why, and whom it concerns
 */
export function holdFlow(compiled: CompiledPlan, asked: readonly AskedFlow[], end_s: number): HeldAsk {
  const { spec, dumps, firstArrive_s } = compiled
  const [first] = asked
  if (!first) return { isHeld: true }
  if (!spec) return { isHeld: false, short_s: first.from_s, why: 'blocked', subjectIds: compiled.issues.filter(({ severity }) => severity === 'block').flatMap(({ subjectIds }) => subjectIds) }
  const lasts_s = end_s + MARGIN_S
  const record = recordShuttle(compileShuttle({
    ...spec,
    horizon_s: Math.max(spec.horizon_s, lasts_s),
    afterReady_s: lasts_s,
    demand: { ...spec.demand, stages: asked },
  }))
  const ready_s = record.run.supplyReady_s
  const weak = asked.flatMap(({ from_s, flow_gpm }) => dumps
    .filter(({ spec: site, pump_gpm }) => flow_gpm * site.demandShare > pump_gpm + AS_GOOD_AS_GPM)
    .map(({ site }) => ({ at_s: Math.max(from_s, ready_s ?? from_s), siteId: site.id as string })))
    .sort((a, b) => a.at_s - b.at_s)[0]
  const short_s = firstShort_s(record, asked, end_s)
  if (weak && weak.at_s < end_s && weak.at_s < (short_s ?? Infinity)) return { isHeld: false, short_s: weak.at_s, why: 'pump', subjectIds: [weak.siteId] }
  if (short_s === undefined) return { isHeld: true }
  return { isHeld: false, short_s, ...causeAt(record, short_s, ready_s, firstArrive_s !== undefined && spec.demand.firstDue !== undefined ? spec.demand.firstDue.arrive_s : undefined) }
}

/** The first moment at which less flows than is asked. */
function firstShort_s({ flow }: ShuttleRecord, asked: readonly AskedFlow[], end_s: number): number | undefined {
  const moments = [...new Set([...flow.map(({ from_s }) => from_s), ...asked.map(({ from_s }) => from_s)])].sort((a, b) => a - b)
  return moments.find((at_s) => {
    const asked_gpm = asked.findLast(({ from_s }) => from_s <= at_s)?.flow_gpm
    const flow_gpm = flow.findLast(({ from_s }) => from_s <= at_s)?.flow_gpm ?? 0
    return asked_gpm !== undefined && at_s < end_s && flow_gpm < asked_gpm - AS_GOOD_AS_GPM
  })
}

function causeAt({ run, log }: ShuttleRecord, short_s: number, ready_s: number | undefined, engine_s: number | undefined): { why: ShortCause; subjectIds: readonly string[] } {
  if (ready_s === undefined || short_s < ready_s) {
    if (engine_s === undefined) return { why: 'no-engine', subjectIds: [] }
    if (short_s < engine_s) return { why: 'engine-not-there', subjectIds: [] }
    const unready = run.dumps.filter(({ supplyReady_s }) => supplyReady_s === undefined).map(({ id }) => id)
    return ready_s === undefined ? { why: 'never-ready', subjectIds: unready } : { why: 'engine-empty', subjectIds: run.dumps.map(({ id }) => id) }
  }
  const dry = run.fills.filter(({ sourceEmptyFrom_s }) => sourceEmptyFrom_s !== undefined && sourceEmptyFrom_s <= short_s).map(({ id }) => id)
  if (dry.length > 0) return { why: 'source-empty', subjectIds: dry }
  const lost = log.findLast(({ kind, time_s }) => kind === 'draft-lost' && time_s <= short_s)
  return lost ? { why: 'draft-lost', subjectIds: [lost.siteId ?? ''] } : { why: 'not-brought', subjectIds: run.dumps.map(({ id }) => id) }
}
