import { namesOf, type Bundle } from '../../plan'

/**
 * Id for an item that a change adds: told from what it is for, so that the same change made on two
 * devices adds one item and not two; numbered where the plan or its district
 * has that id already.
 *
 * @param base letters, digits, `_ . : -`; cut to what an id may hold
 */
export function freshId(bundle: Pick<Bundle, 'district' | 'plan'>, base: string): string {
  const { tenders, legNotes, demand = [] } = bundle.plan
  const taken = new Set([...namesOf(bundle).keys(), ...[...tenders, ...legNotes, ...demand].map(({ id }) => id as string)])
  const stem = base.slice(0, 60)
  let id = stem
  for (let number = 2; taken.has(id); number++) id = `${stem}-${number}`
  return id
}
