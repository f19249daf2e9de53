import { FIRE_GROUND, type EditBody } from '../plan'
import { isDistrictList } from './place'
import type { Target } from './place-item'
import { idsOf } from './target-ids'
import type { Candidate } from './understand'
import { itemOf } from './understand'

/** What becomes of a place that can be taken. */
export const takings = ['add', 'update', 'skip'] as const
export type Taking = (typeof takings)[number]

/** What happens unless a person says otherwise: nothing that is there is changed unasked, but by our own file. */
export function defaultTaking({ match, repeats, changes, far_mi }: Pick<Candidate, 'match' | 'repeats' | 'changes' | 'far_mi'>): Taking {
  if (repeats !== undefined || far_mi !== undefined) return 'skip'
  if (!match) return 'add'
  return match.by === 'id' && changes.length > 0 ? 'update' : 'skip'
}

export type Taken = { readonly district: readonly EditBody[]; readonly plan: readonly EditBody[]; readonly addedCount: number; readonly updatedCount: number }

/**
 * The edits that take places in: one act. Ids of our own file are kept where they are free, so that what refers to them
 * still does; where a place is taken for one that is there, its references go to that.
 */
export function takeIn(wanted: readonly { readonly candidate: Candidate; readonly taking: Taking }[], target: Target, newId: () => string): Taken {
  const taken = idsOf(target)
  const ids = new Map<string, string>()
  const chosen = wanted.map(({ candidate, taking }) => {
    const { item, match, list } = candidate
    if (list === 'fireGround') return { candidate, taking, id: FIRE_GROUND }
    const id = taking !== 'add' && match ? match.id : item.id !== undefined && !taken.has(item.id) ? item.id : newId()
    if (taking === 'add') taken.add(id)
    if (item.id !== undefined && !ids.has(item.id)) ids.set(item.id, id)
    return { candidate, taking, id }
  })
  const district: EditBody[] = [], plan: EditBody[] = []
  for (const { candidate: { list, item, changes }, taking, id } of chosen) {
    if (taking === 'skip') continue
    const bodies = isDistrictList(list) ? district : plan
    const own = withIds(item, ids)
    if (list === 'fireGround') bodies.push({ kind: 'setFields', set: { fireGround: item.point } })
    else if (taking === 'add') bodies.push({ kind: 'addItem', collection: list, item: { ...nameless(list, own), id } })
    else {
      const there = itemOf(target, list, id)
      if (there && changes.length > 0) bodies.push(updateOf(list, id, own, changes))
    }
  }
  const all = chosen.filter(({ taking }) => taking !== 'skip')
  const addedCount = all.filter(({ taking }) => taking === 'add').length
  return { district, plan, addedCount, updatedCount: all.length - addedCount }
}

function updateOf(list: string, id: string, item: Readonly<Record<string, unknown>>, changes: readonly string[]): EditBody {
  const known = (item.evidence ?? {}) as Record<string, unknown>
  const evidence = Object.fromEntries(changes.flatMap((field) => (/_[A-Za-z]+$|^point$/.test(field) ? [[field, known[field] ?? null]] : [])))
  return { kind: 'setFields', collection: list, id, set: Object.fromEntries(changes.map((field) => [field, item[field]])), ...(Object.keys(evidence).length > 0 && { evidence }) }
}

/** Notes on ways have no name in the plan; a file gives every line one. */
function nameless(list: string, item: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const { name, ...rest } = item
  return list === 'legNotes' ? rest : { ...rest, name }
}

function withIds(item: Readonly<Record<string, unknown>>, ids: ReadonlyMap<string, string>): Record<string, unknown> {
  const turned = (value: unknown): unknown => (typeof value === 'string' ? (ids.get(value) ?? value) : Array.isArray(value) ? value.map(turned) : value)
  return Object.fromEntries(Object.entries(item).filter(([, value]) => value !== undefined).map(([field, value]) => [field, /Ids?$/.test(field) ? turned(value) : value]))
}
