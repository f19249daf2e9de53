import type { Bundle, Fact } from '../plan'
import { isSession, replay } from './session'
import { readSession, sessionShortfall } from './session-record'
import { shortfallOf } from './shortfall'

/** What one thing that came about did to the water: the exercise as it was, against the same without it. */
export type FactEffect = {
  readonly factId: string
  /** More time short with it than without; less than 0 where it helped. */
  readonly short_s: number
  /** More water missing with it than without. */
  readonly missing_gal: number
  /** From the moment it came to the moment from which the flow asked for was there for the rest of the exercise; 0 where it never fell behind, absent where it never came back. */
  readonly recovered_s?: number
}

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
  const whole = outcomeOf(bundle, facts, to_s)
  return facts.map((fact) => {
    const without = outcomeOf(bundle, facts.filter((one) => one !== fact), to_s)
    const since = shortfallOf(whole.asked, whole.flow, fact.at_s, to_s)
    const recovered_s = since.short_s === 0 ? 0 : since.lastTo_s === undefined ? undefined : since.lastTo_s - fact.at_s
    return {
      factId: fact.id,
      short_s: whole.shortfall.short_s - without.shortfall.short_s,
      missing_gal: whole.shortfall.missing_gal - without.shortfall.missing_gal,
      ...(recovered_s !== undefined && { recovered_s }),
    }
  })
}

function outcomeOf(bundle: Bundle, facts: readonly Fact[], to_s: number) {
  const session = replay(bundle, facts, to_s)
  if (!isSession(session)) throw new RangeError(`bundle is blocked (${session.map(({ code }) => code).join(', ')}), must be playable`)
  const { asked, flow } = readSession(session)
  return { asked, flow, shortfall: sessionShortfall(session, { asked, flow }) }
}
