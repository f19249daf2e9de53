import type { Change, EditBody, Exercise, ExerciseClock, ExerciseNote, Fact } from '../plan'
import { hearsOf, toldOf } from './seat-hears'
import type { Seat } from './seat-view'

/** Something that was written down in an exercise and is news at a table: one edit of it makes one of these, or none. */
export type Happening =
  | { readonly kind: 'fact' | 'factGone'; readonly fact: Fact }
  | { readonly kind: 'note' | 'noteGone'; readonly note: ExerciseNote }
  | { readonly kind: 'clock'; readonly clock?: ExerciseClock }
  | { readonly kind: 'ended'; readonly at_s?: number }

/** What a seat hears of a happening. */
export type SeatNews =
  | { readonly kind: 'fact'; readonly id: string; readonly at_s: number; readonly cause: Fact['cause']; readonly by: string; readonly change: Change; readonly told?: string }
  | { readonly kind: 'note'; readonly id: string; readonly at_s: number; readonly text: string }
  | { readonly kind: 'factGone' | 'noteGone'; readonly id: string }
  | { readonly kind: 'clock'; readonly clock?: ExerciseClock }
  | { readonly kind: 'ended'; readonly at_s?: number }

/** What an edit of an exercise was, as news. Edits of what is still to come are none. */
export function happeningOf(body: EditBody, inverse: EditBody): Happening | undefined {
  const added = body.kind === 'addItem' ? body : undefined
  const taken = body.kind === 'removeItem' && inverse.kind === 'addItem' ? inverse : undefined
  if (added?.collection === 'facts') return { kind: 'fact', fact: added.item as unknown as Fact }
  if (taken?.collection === 'facts') return { kind: 'factGone', fact: taken.item as unknown as Fact }
  if (added?.collection === 'notes') return { kind: 'note', note: added.item as unknown as ExerciseNote }
  if (taken?.collection === 'notes') return { kind: 'noteGone', note: taken.item as unknown as ExerciseNote }
  if (body.kind !== 'setFields' || body.collection !== undefined) return undefined
  if ('endedAt_s' in body.set) return { kind: 'ended', ...(typeof body.set.endedAt_s === 'number' && { at_s: body.set.endedAt_s }) }
  if ('clock' in body.set) return { kind: 'clock', ...(body.set.clock ? { clock: body.set.clock as ExerciseClock } : {}) }
  return undefined
}

/**
 * All that happened in an exercise, in order: what it was made with, then what each edit brought.
 *
 * The same list comes out whenever it is asked for, however far the exercise has gone since, so that a place in it is
 * a number that lasts.
 */
export function happeningsOf(exercise: Exercise, edits: readonly WrittenEdit[]): Happening[] {
  const later = edits.flatMap(({ body, inverse }) => happeningOf(body, inverse) ?? [])
  const begun = new Map<string, Happening>()
  const added = new Set<string>()
  for (const one of later) {
    if (one.kind === 'fact') added.add(one.fact.id)
    if (one.kind === 'note') added.add(one.note.id)
    if (one.kind === 'factGone' && !added.has(one.fact.id)) begun.set(one.fact.id, { kind: 'fact', fact: one.fact })
    if (one.kind === 'noteGone' && !added.has(one.note.id)) begun.set(one.note.id, { kind: 'note', note: one.note })
  }
  for (const fact of exercise.facts) if (!added.has(fact.id)) begun.set(fact.id, { kind: 'fact', fact })
  for (const note of exercise.notes) if (!added.has(note.id)) begun.set(note.id, { kind: 'note', note })
  const timeOf = (one: Happening) => (one.kind === 'fact' ? one.fact.at_s : one.kind === 'note' ? one.note.at_s : 0)
  const clock = madeWith(exercise, edits, 'clock')
  const at_s = madeWith(exercise, edits, 'endedAt_s')
  return [
    ...(clock ? [{ kind: 'clock' as const, clock: clock as ExerciseClock }] : []), ...[...begun.values()].sort((a, b) => timeOf(a) - timeOf(b)),
    ...(typeof at_s === 'number' ? [{ kind: 'ended' as const, at_s }] : []), ...later,
  ]
}

type WrittenEdit = { readonly body: EditBody; readonly inverse: EditBody }

/** What a field of an exercise was before any edit of it: what the first of them put aside, or what still stands there. */
function madeWith(exercise: Exercise, edits: readonly WrittenEdit[], field: 'clock' | 'endedAt_s'): unknown {
  const first = edits.find(({ body }) => body.kind === 'setFields' && body.collection === undefined && field in body.set)
  if (!first) return exercise[field]
  return first.inverse.kind === 'setFields' ? first.inverse.set[field] : undefined
}

/**
 * A happening as a seat hears of it; undefined where it does not. Whether it does hangs on the happening and the seat alone.
 *
 * @param by   who sits there, as it stands beside what they decide and write: their own is always heard of
 * @param told what the crews are told with the inject of this id
 */
export function newsFor(one: Happening, seat: Seat, by: string, told: (injectId: string) => string | undefined): SeatNews | undefined {
  switch (one.kind) {
    case 'fact':
    case 'factGone': {
      const { id, at_s, cause, change, injectId } = one.fact
      if (!(cause === 'decision' && one.fact.by === by) && !hearsOf(one.fact, seat)) return undefined
      if (one.kind === 'factGone') return { kind: 'factGone', id }
      const words = injectId === undefined ? undefined : told(injectId)
      return { kind: 'fact', id, at_s, cause, by: one.fact.by, change: toldOf(change), ...(words !== undefined && { told: words }) }
    }
    case 'note':
      return one.note.by === by ? { kind: 'note', id: one.note.id, at_s: one.note.at_s, text: one.note.text } : undefined
    case 'noteGone':
      return one.note.by === by ? { kind: 'noteGone', id: one.note.id } : undefined
    case 'clock':
    case 'ended':
      return one
  }
}
