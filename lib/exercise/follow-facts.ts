import type { Issue } from '../issue'
import type { Bundle, Fact } from '../plan'
import { isSession, startSession, takeEffect, type Session } from './session'

/** An exercise at its last fact, and the facts it went through, those too that could not take effect. */
export type Followed = { readonly facts: readonly Fact[]; readonly session: Session | Issue[] }

/**
 * The exercise at the last of its facts: the same as a replay of them, and as quick as what is new among them.
 *
 * @param facts  in any order; those of one moment stay in theirs
 * @param before as it was followed so far, on the same bundle
 */
export function followFacts(bundle: Bundle, facts: readonly Fact[], before?: Followed): Followed {
  const ordered = facts.toSorted((a, b) => a.at_s - b.at_s)
  const isOnward = before !== undefined && before.facts.length <= ordered.length && before.facts.every(({ id, at_s }, i) => ordered[i]!.id === id && ordered[i]!.at_s === at_s)
  let session = isOnward ? before.session : startSession(bundle)
  for (const fact of isOnward ? ordered.slice(before.facts.length) : ordered) {
    if (!isSession(session)) break
    const made = takeEffect({ ...session, clock_s: fact.at_s }, fact)
    if (isSession(made)) session = made
  }
  return { facts: ordered, session }
}
