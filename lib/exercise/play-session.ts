import type { Issue } from '../issue'
import type { Inject } from '../plan'
import { factOf, isSession, takeEffect, type Session } from './session'
import { firstTrigger } from './trigger'

export type InjectCame = { readonly inject: Inject; readonly refused?: readonly Issue[] }

/**
 * Lets the exercise go on to a moment. Injects whose time or condition comes on the way take effect at that very
 * moment, in the order of the exercise where several come at once.
 *
 * @param until_s not before the clock
 * @param came hears of each inject that came, with the issues where it could not take effect: what it speaks of is gone
 * @throws RangeError if `until_s` lies before the clock
 */
export function playSession(session: Session, until_s: number, came?: (one: InjectCame) => void): Session {
  if (!(until_s >= session.clock_s)) throw new RangeError(`until_s is ${until_s}, must be ${session.clock_s} or more`)
  let here = session
  for (;;) {
    const next = firstTrigger(here, until_s)
    if (!next) return { ...here, clock_s: until_s }
    const { inject, at_s } = next
    here = { ...here, clock_s: Math.max(here.clock_s, at_s), armed: here.armed.filter(({ id }) => id !== inject.id) }
    const made = takeEffect(here, factOf(inject, here.clock_s))
    if (isSession(made)) here = made
    came?.({ inject, ...(!isSession(made) && { refused: made }) })
  }
}
