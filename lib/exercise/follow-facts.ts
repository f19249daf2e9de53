import type { Issue } from '../issue'
import type { Bundle, Fact } from '../plan'
import { foldFacts, startSession, type Session } from './session'

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
  const session = isOnward ? foldFacts(before.session, ordered.slice(before.facts.length)) : foldFacts(startSession(bundle), ordered)
  return { facts: ordered, session }
}

/** Follows one exercise from one set of its facts to the next. */
export function follower(bundle: Bundle): (facts: readonly Fact[]) => Followed {
  let followed: Followed | undefined
  return (facts) => (followed = followFacts(bundle, facts, followed))
}
