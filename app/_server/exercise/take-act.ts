import { isInOrder, isSession, mayDecide, takeEffect } from '@/lib/exercise'
import type { EditBody, Exercise, Fact } from '@/lib/plan'
import type { SeatAct } from '@/app/_seat/seat-messages'
import type { Grant } from '../../_devices/devices'
import type { SeatScope } from '../../_devices/scope'
import { appendEdits } from '../edits'
import type { Database } from '../open-database'
import { refusal, refusalOfIssue } from '../refusal'
import { roomOf } from './rooms'
import { sessionAt, type Running } from './running'
import { personAt, siteNameOf } from './seat-info'

// One for the process: kept on the global object, for this module may be loaded more than once.
const held = globalThis as typeof globalThis & { millraceActs?: Map<string, Promise<unknown>> }

/** One act of an exercise after the other, in the order in which they come in. */
function inTurn<T>(exerciseId: string, work: () => Promise<T>): Promise<T> {
  const turns = (held.millraceActs ??= new Map())
  const turn = (turns.get(exerciseId) ?? Promise.resolve()).then(work, work)
  turns.set(exerciseId, turn)
  const leave = () => { if (turns.get(exerciseId) === turn) turns.delete(exerciseId) }
  turn.then(leave, leave)
  return turn
}

/** Under this id an act is written down: an id that one device makes up can never be one of another's. */
const editIdOf = (grant: Grant<SeatScope>, act: SeatAct): string => `${grant.id.slice(0, 8)}-${act.id}`

/**
 * Takes what a seat decides or notes: at the exercise's clock by the station's time, after all that came in before it.
 * One that was taken already, and is sent again because its answer was lost, is done.
 *
 * @returns at which moment of the exercise it stands
 * @throws Refusal if it is not this seat's to decide, cannot be, or the exercise does not run
 */
export const takeAct = (database: Database, grant: Grant<SeatScope>, act: SeatAct, now: () => number = Date.now): Promise<{ at_s: number }> =>
  inTurn(grant.scope.exerciseId, async () => {
    const { exerciseId } = grant.scope
    const running = await roomOf(exerciseId).current()
    if (!running) throw refusal('not-found', { thing: 'exercise' })
    const id = editIdOf(grant, act)
    const known = await database.edit.findUnique({ where: { id }, select: { docId: true, body: true } })
    if (known?.docId === exerciseId) return { at_s: momentIn(JSON.parse(known.body) as EditBody) }
    const { exercise } = running
    const body = act.kind === 'note' ? noteFor(running, grant, id, act.text, now()) : factFor(running, grant, id, act.change, now())
    await appendEdits(database, exercise.id, [{ id, docId: exercise.id, base: running.sequence, by: `seat ${grant.id}`.slice(0, MOST_LETTERS), at: new Date(now()).toISOString(), body }])
    return { at_s: momentIn(body) }
  })

const MOST_LETTERS = 120
const momentIn = (body: EditBody): number => (body.kind === 'addItem' && typeof body.item.at_s === 'number' ? body.item.at_s : 0)

function noteFor(running: Running, grant: Grant<SeatScope>, id: string, text: string, now_ms: number): EditBody {
  const by = personAt(grant, siteNameOf(running, grant.scope.siteId))
  return { kind: 'addItem', collection: 'notes', item: { id, at_s: sessionAt(running, now_ms)?.clock_s ?? 0, by, role: grant.scope.role, text } satisfies Exercise['notes'][number] }
}

function factFor(running: Running, grant: Grant<SeatScope>, id: string, change: Fact['change'], now_ms: number): EditBody {
  if (!mayDecide(change, grant.scope)) throw refusal('seat-not-yours')
  const { exercise } = running
  if (exercise.endedAt_s !== undefined) throw refusal('exercise-over')
  if (!exercise.clock) throw refusal('exercise-not-begun')
  const session = sessionAt(running, now_ms)
  if (!session) throw refusal('not-found', { thing: 'exercise' })
  if (isInOrder(session.now.world, change)) throw refusal('seat-in-order')
  const fact: Fact = { id, at_s: session.clock_s, cause: 'decision', by: personAt(grant, siteNameOf(running, grant.scope.siteId)), change }
  const made = takeEffect(session, fact)
  if (!isSession(made)) throw made[0] ? refusalOfIssue(made[0]) : refusal('seat-not-yours')
  return { kind: 'addItem', collection: 'facts', item: fact }
}
