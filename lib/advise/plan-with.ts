import type { Issue } from '../issue'
import { applyEdit, type EditBody, type Plan } from '../plan'

/**
 * A plan with edits applied in order. The given plan is not changed.
 *
 * @returns the new plan, and the edits that take it back, in the order in which to apply them; or the issue why one was refused
 */
export function planWith(plan: Plan, edits: readonly EditBody[]): { plan: Plan; inverses: EditBody[] } | Issue {
  let next = plan
  const inverses: EditBody[] = []
  for (const edit of edits) {
    const applied = applyEdit(next, edit)
    if ('code' in applied) return applied
    next = applied.doc
    inverses.unshift(applied.inverse)
  }
  return { plan: next, inverses }
}
