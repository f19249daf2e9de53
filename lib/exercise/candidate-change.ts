import { lacksWays, type Candidate, type ResolveWays } from '../advise'
import { applyEdit, type Bundle, type Change, type EditBody, type Plan } from '../plan'
import type { Conditions } from './conditions'
import { replaceSite } from './replace-site'
import { detoursRound } from './road-closures'

type Planned = Extract<Change, { kind: 'plan' }>

/** Fields without which a site is not where it was, or not who it was. */
const MAKES_ANEW = ['pumperId', 'point'] as const

/**
 * Advice as something that is decided in the middle of a run: a site that is moved or gets another pumper is given up and set up anew.
 *
 * @param tag tells the new sites of this decision from others
 */
export function editsOf(bundle: Bundle, { edits }: Pick<Candidate, 'edits'>, tag: string): EditBody[] {
  const anew = edits.flatMap((edit) => (edit.kind === 'setFields' && MAKES_ANEW.some((field) => field in edit.set) ? [edit] : []))
  if (anew.length === 0) return [...edits]
  return anew.flatMap(({ id = '', set }) => {
    const fields = Object.fromEntries(Object.entries(set).filter(([, value]) => value !== null))
    return replaceSite(bundle, id, fields, `${id}~${tag}`.slice(-64))
  })
}

/**
 * Edits of the plan as a change of an exercise, with the ways that the changed plan drives, round what is closed too.
 *
 * @returns undefined where an edit is refused, or nobody knows the ways
 */
export function changeOfEdits(bundle: Bundle, edits: readonly EditBody[], { closed }: Pick<Conditions, 'closed'>, resolve: ResolveWays): Planned | undefined {
  let plan: Plan = bundle.plan
  for (const edit of edits) {
    const applied = applyEdit(plan, edit)
    if ('code' in applied) return undefined
    plan = applied.doc
  }
  const changed = resolve({ ...bundle, plan })
  if (lacksWays(changed)) return undefined
  const known = new Set(bundle.legs.map(({ key }) => key))
  const round = closed.length > 0 ? detoursRound(changed, closed, resolve) : undefined
  return {
    kind: 'plan', edits: edits.map((body) => ({ doc: 'plan', body })), legs: changed.legs.filter(({ key }) => !known.has(key)),
    ...(round && { detours: [...round.detours] }),
  }
}
