import type { Issue } from '../issue'
import type { Bundle, Fact } from '../plan'
import { gapsOf, type Gap } from './gaps'
import { foldFacts, isSession, startSession, type Session } from './session'
import { readFlows, sessionShortfall } from './session-record'
import { shortfallOf } from './shortfall'

/** What one thing that came about did to the water: the exercise as it was, against the same without it. */
export type FactEffect = {
  readonly factId: string
  /** More time short with it than without; less than 0 where it helped. */
  readonly short_s: number
  /** More water missing with it than without. */
  readonly missing_gal: number
  /**
   * With it and without it the flow falls behind at other times, and what it made more or less is no more than the largest of
   * those gaps. A tank that runs dry costs a whole gap, and whatever shifts the tenders shifts the gaps: one more or fewer in the
   * exercise tells nothing of what the fact is worth.
   */
  readonly isTiming: boolean
  /** From the moment it came to the moment from which the flow asked for was there for the rest of the exercise; 0 where it never fell behind, absent where it never came back. */
  readonly recovered_s?: number
}

/** Less than this is no difference. */
const LEAST_GAL = 1

/**
 * What each fact did, with all others as they were.
 *
 * Decisions that answered an inject stay in the run without it, so the sums need not add up to the whole;
 * they say what each did where it stood. A fact that cannot be without another falls with it.
 *
 * @param facts in order; at least one exercise must be playable with them
 * @param to_s end of the exercise
 * @throws RangeError if the plan cannot be played
 */
export function effectsOf(bundle: Bundle, facts: readonly Fact[], to_s: number): FactEffect[] {
  // The run before each fact, and last the whole one: without a fact, it goes on from there.
  const runs = [startSession(bundle)]
  for (const [i, fact] of facts.entries()) runs.push(foldFacts(runs[i]!, [fact]))
  const whole = outcomeOf(runs.at(-1)!, to_s)
  return facts.map((fact, i) => {
    const without = outcomeOf(foldFacts(runs[i]!, facts.slice(i + 1)), to_s)
    const since = shortfallOf(whole.asked, whole.flow, fact.at_s, to_s)
    const recovered_s = since.short_s === 0 ? 0 : since.lastTo_s === undefined ? undefined : since.lastTo_s - fact.at_s
    const missing_gal = whole.shortfall.missing_gal - without.shortfall.missing_gal
    const gaps = [whole, without].map(({ asked, flow, countFrom_s }) => gapsOf(asked, flow, Math.min(countFrom_s, to_s), to_s)) as [Gap[], Gap[]]
    const [with_gal, without_gal] = [largestOwn(gaps[0], gaps[1]), largestOwn(gaps[1], gaps[0])]
    return {
      factId: fact.id,
      short_s: whole.shortfall.short_s - without.shortfall.short_s,
      missing_gal, isTiming: with_gal > 0 && without_gal > 0 && Math.abs(missing_gal) >= LEAST_GAL && Math.abs(missing_gal) <= Math.max(with_gal, without_gal),
      ...(recovered_s !== undefined && { recovered_s }),
    }
  })
}

/** Water missing in the largest gap that the other run does not have just so; 0 where there is none. */
const largestOwn = (gaps: readonly Gap[], other: readonly Gap[]): number =>
  Math.max(0, ...gaps.filter((gap) => !other.some((one) => Math.abs(one.from_s - gap.from_s) < 1 && Math.abs(one.to_s - gap.to_s) < 1)).map(({ missing_gal }) => missing_gal))

function outcomeOf(run: Session | Issue[], to_s: number) {
  if (!isSession(run)) throw new RangeError(`bundle is blocked (${run.map(({ code }) => code).join(', ')}), must be playable`)
  const session = { ...run, clock_s: to_s }
  const flows = readFlows(session)
  return { ...flows, countFrom_s: session.now.scenario.demand.countFrom_s, shortfall: sessionShortfall(session, flows) }
}
