import { planWith, type Candidate } from '@/lib/advise'
import { namesOf, type District, type Plan } from '@/lib/plan'
import type { NameOf } from '../_text'

/** Names as they are once a change is applied: a site that it moves or opens is called by its new place. */
export function changedNames(docs: { district: District; plan: Plan }, { edits }: Pick<Candidate, 'edits'>, names: NameOf): NameOf {
  const changed = planWith(docs.plan, edits)
  if ('code' in changed) return names
  const own = namesOf({ district: docs.district, plan: changed.plan })
  return (id) => own.get(id) ?? names(id)
}
