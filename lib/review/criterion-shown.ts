import { SECONDS_PER_MINUTE } from '../units'
import { broughtBy_gal, type Load } from './loads'
import type { Reading } from './log-events'

/** A flow asked for without a break. Seconds after dispatch. */
export type AskedSpan = { readonly flow_gpm: number; readonly from_s: number; readonly for_s: number }

/** Whether a log shows a flow, and by what. */
export type Shown = {
  readonly asked: AskedSpan
  readonly end_s: number
  /** `pass`: shown throughout. `fail`: something logged speaks against it. `unknown`: the log does not reach, nothing was logged, or it was not put to the test. */
  readonly verdict: 'pass' | 'fail' | 'unknown'
  /** `readings`: the flow itself was read at the fire. `water`: water enough came into the tanks; the flow was not read often enough. */
  readonly basis: 'readings' | 'water'
  /** When it fails. */
  readonly fails_s?: number
  /** Less was asked for at this moment, and came: no test of the flow. Absent: it was put to the test, or failed. */
  readonly untested?: { readonly at_s: number; readonly asked_gpm: number }
  /** The log reaches up to here. */
  readonly shownUpTo_s: number
  readonly readingCount: number
  readonly lowest_gpm?: number
}

/** Flow that the fire ground asked for, from each moment on. */
export type AskedStages = readonly { readonly from_s: number; readonly flow_gpm: number }[]

/** What was asked for and came, but for what a gauge may be off. Common practice, no source. */
const MET_SHARE = 0.95

/** A flow that was read counts until the next reading, at most so long. Assumed. */
const READING_HOLDS_S = 15 * SECONDS_PER_MINUTE

/**
 * Whether a log shows that a flow was there from a moment on, for a time, without a break.
 *
 *   water: first engine's tank + water brought by t ≥ flow · (t − from), at every t
 *
 * Water in the tanks is not yet water on the fire: where the flow was read too seldom the answer says that it stands on
 * the water alone. Where less was asked for than the flow, what came of it can only fail by not being what was asked for then; else it
 * was not put to the test.
 *
 * @param tank_gal of the engine that was there first, 0 where nobody knows
 * @param end_s    of the log
 * @param stages   rising; empty: nobody says, and all of the flow counts as asked for
 */
export function criterionShown(asked: AskedSpan, loads: readonly Load[], readings: readonly Reading[], tank_gal: number, end_s: number, stages: AskedStages = []): Shown {
  const until_s = asked.from_s + asked.for_s
  const seen = readings.filter(({ kind, post, value, at_s }) => kind === 'flow' && post.kind === 'attack' && value !== undefined && at_s <= until_s).toSorted((a, b) => a.at_s - b.at_s)
  const before = seen.findLast(({ at_s }) => at_s <= asked.from_s)
  const within = seen.filter(({ at_s }) => at_s > asked.from_s)
  // What was read before may speak for the flow, but not against it: more may have been asked for since.
  const speaksFor = before !== undefined && asked.from_s - before.at_s <= READING_HOLDS_S && (before.value ?? 0) >= asked.flow_gpm
  const counted = [...(before && speaksFor ? [{ ...before, at_s: asked.from_s }] : []), ...within]
  const askedAt_gpm = (at_s: number): number => Math.min(asked.flow_gpm, stages.length === 0 ? Infinity : stages.findLast(({ from_s }) => from_s <= at_s)?.flow_gpm ?? 0)
  const below = counted.filter(({ value = 0 }) => value < asked.flow_gpm)
  const low = below.find(({ value = 0, at_s }) => askedAt_gpm(at_s) >= asked.flow_gpm || value < MET_SHARE * askedAt_gpm(at_s))
  const upTo_s = Math.min(until_s, end_s)
  const short_s = firstShort_s(asked, [], loads, tank_gal, upTo_s)
  const dry_s = short_s === undefined ? undefined : firstShort_s(asked, stages, loads, tank_gal, upTo_s)
  const easy_s = [below.find((one) => askedAt_gpm(one.at_s) < asked.flow_gpm)?.at_s, short_s].filter((at_s) => at_s !== undefined).sort((a, b) => a - b)[0]
  const steps_s = [asked.from_s, ...counted.map(({ at_s }) => at_s), Math.min(until_s, end_s)]
  const isRead = counted[0]?.at_s === asked.from_s && steps_s.every((at_s, k) => k === 0 || at_s - steps_s[k - 1]! <= READING_HOLDS_S)
  const leastAsked_gpm = (at_s: number): number => Math.min(...[asked.from_s, ...stages.map(({ from_s }) => from_s), at_s].filter((one) => one >= asked.from_s && one <= at_s).map(askedAt_gpm))
  const fails_s = [low?.at_s, dry_s].filter((at_s) => at_s !== undefined).sort((a, b) => a - b)[0]
  const isEmpty = loads.length === 0 && counted.length === 0
  return {
    asked, end_s: until_s,
    verdict: isEmpty ? 'unknown' : fails_s !== undefined ? 'fail' : easy_s !== undefined || end_s < until_s ? 'unknown' : 'pass',
    basis: isRead || (low !== undefined && fails_s === low.at_s) ? 'readings' : 'water',
    ...(!isEmpty && fails_s !== undefined && { fails_s }),
    ...(!isEmpty && fails_s === undefined && easy_s !== undefined && { untested: { at_s: easy_s, asked_gpm: leastAsked_gpm(easy_s) } }),
    shownUpTo_s: Math.min(end_s, until_s),
    readingCount: counted.length,
    ...(counted.length > 0 && { lowest_gpm: Math.min(...counted.map(({ value = 0 }) => value)) }),
  }
}

/**
 * The first moment at which less has come than was asked for; the water comes in straight lines, so only their ends matter.
 *
 * @param stages less than the flow counts where it was all that was asked for; empty: the flow throughout
 */
function firstShort_s({ flow_gpm, from_s }: AskedSpan, stages: AskedStages, loads: readonly Load[], tank_gal: number, until_s: number): number | undefined {
  const ends_s = [...new Set([from_s, ...stages.map((stage) => stage.from_s), ...loads.flatMap((load) => [load.from_s, load.upTo_s]), until_s])].filter((at_s) => at_s >= from_s && at_s <= until_s).sort((a, b) => a - b)
  const steps = stages.length === 0 ? [{ from_s, flow_gpm }] : stages
  const asked_gal = (at_s: number): number => steps.reduce((sum, step, k) =>
    sum + (Math.min(flow_gpm, step.flow_gpm) * Math.max(0, Math.min(at_s, steps[k + 1]?.from_s ?? Infinity) - Math.max(from_s, step.from_s))) / SECONDS_PER_MINUTE, 0)
  const spare = (at_s: number): number => tank_gal + broughtBy_gal(loads, at_s) - asked_gal(at_s)
  for (const [k, at_s] of ends_s.entries()) {
    const now_gal = spare(at_s)
    if (now_gal >= -1e-6) continue
    const before_s = ends_s[k - 1]
    if (before_s === undefined) return at_s
    const before_gal = spare(before_s)
    return before_s + ((at_s - before_s) * Math.max(0, before_gal)) / (Math.max(0, before_gal) - now_gal)
  }
  return undefined
}
