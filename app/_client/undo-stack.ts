import type { EditBody } from '@/lib/plan'
import { overlaps } from './overlaps'

/** One thing to take back: an edit by its inverse, or a whole document put away or brought back. */
export type UndoStep =
  | { kind: 'edit'; docId: string; editId: string; inverse: EditBody; touches: readonly string[]; isOvertaken: boolean }
  | { kind: 'remove' | 'restore'; docId: string }

/** All that one act of the user did, whichever documents it went to. */
export type UndoEntry = { id: string; label: string; mergeKey?: string; steps: readonly UndoStep[] }

export type UndoStack = { done: readonly UndoEntry[]; undone: readonly UndoEntry[] }

export const emptyUndoStack: UndoStack = { done: [], undone: [] }

/** What the buttons say: whether there is something to take back or to do again, and what. */
export type UndoState = { canUndo: boolean; canRedo: boolean; undoLabel?: string; redoLabel?: string }

export function undoStateOf({ done, undone }: UndoStack): UndoState {
  const [undoLabel, redoLabel] = [done.at(-1)?.label, undone.at(-1)?.label]
  return { canUndo: done.length > 0, canRedo: undone.length > 0, ...(undoLabel !== undefined && { undoLabel }), ...(redoLabel !== undefined && { redoLabel }) }
}

const LONGEST = 200

/** Puts a new act on the stack; acts with the same merge key in a row are taken back as one. */
export function pushed(stack: UndoStack, entry: UndoEntry): UndoStack {
  const last = stack.done.at(-1)
  const joins = last !== undefined && entry.mergeKey !== undefined && last.mergeKey === entry.mergeKey && stack.undone.length === 0
  const done = joins ? [...stack.done.slice(0, -1), { ...entry, steps: [...last.steps, ...entry.steps] }] : [...stack.done, entry]
  return { done: done.slice(-LONGEST), undone: [] }
}

/** Whether a later act changed what this one did: taken back alone, it would take that along. */
export function isBuiltOn({ done }: UndoStack, entry: UndoEntry): boolean {
  const later = done.slice(done.indexOf(entry) + 1).flatMap(({ steps }) => steps)
  return entry.steps.some((step) => step.kind === 'edit' && later.some((other) => other.kind === 'edit' && other.docId === step.docId && overlaps(step.touches, other.touches)))
}

/** Others have changed these places: taking back what was done there before would take their work away. */
export function overtakenBy(stack: UndoStack, docId: string, touches: readonly string[]): UndoStack {
  if (touches.length === 0) return stack
  const mark = (step: UndoStep): UndoStep =>
    step.kind === 'edit' && step.docId === docId && overlaps(step.touches, touches) ? { ...step, isOvertaken: true } : step
  return mapSteps(stack, (steps) => steps.map(mark))
}

/** Edits that never came to stand have nothing to take back. */
export function withoutEdits(stack: UndoStack, editIds: readonly string[]): UndoStack {
  if (editIds.length === 0) return stack
  return mapSteps(stack, (steps) => steps.filter((step) => step.kind !== 'edit' || !editIds.includes(step.editId)))
}

/** A document is here again: there is no bringing it back any more. */
export const withoutPutAway = (stack: UndoStack, docId: string): UndoStack =>
  mapSteps(stack, (steps) => steps.filter((step) => step.kind !== 'restore' || step.docId !== docId))

function mapSteps(stack: UndoStack, change: (steps: readonly UndoStep[]) => readonly UndoStep[]): UndoStack {
  const through = (entries: readonly UndoEntry[]) =>
    entries.map((entry) => ({ ...entry, steps: change(entry.steps) })).filter(({ steps }) => steps.length > 0)
  return { done: through(stack.done), undone: through(stack.undone) }
}
