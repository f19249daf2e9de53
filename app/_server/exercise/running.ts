import { followFacts, happeningOf, happeningsOf, isSession, type Followed, type Happening, type Session } from '@/lib/exercise'
import type { EditBody, Exercise } from '@/lib/plan'
import { clockAt } from '@/app/_exercise/exercise-clock'
import { docOf } from '../documents'
import type { Database } from '../open-database'

/** An exercise as it stands in the database, with what happened in it and its run at the last fact. */
export type Running = { sequence: number; exercise: Exercise; happenings: readonly Happening[]; followed: Followed }

/**
 * Reads what is new of an exercise; undefined where there is none, or it was put away.
 *
 * @param before as it was read the last time: then only what came since is worked out
 */
export async function readRunning(database: Database, id: string, before?: Running): Promise<Running | undefined> {
  const head = await database.document.findUnique({ where: { id }, select: { kind: true, deletedAt: true, sequence: true } })
  if (head?.kind !== 'exercise' || head.deletedAt) return undefined
  if (before?.sequence === head.sequence) return before
  const row = await database.document.findUniqueOrThrow({ where: { id } })
  const known = before && before.sequence < row.sequence ? before : undefined
  const rows = await database.edit.findMany({ where: { docId: id, sequence: { gt: known?.sequence ?? 0, lte: row.sequence } }, orderBy: { sequence: 'asc' }, select: { body: true, inverse: true } })
  const edits = rows.map(({ body, inverse }) => ({ body: JSON.parse(body) as EditBody, inverse: JSON.parse(inverse) as EditBody }))
  const exercise = docOf(row) as unknown as Exercise
  return {
    sequence: row.sequence, exercise, followed: followFacts(exercise.bundle, exercise.facts, known?.followed),
    happenings: known ? [...known.happenings, ...edits.flatMap(({ body, inverse }) => happeningOf(body, inverse) ?? [])] : happeningsOf(exercise, edits),
  }
}

/** The run at the exercise's clock, never before its last fact; undefined where its plan cannot be played. */
export function sessionAt({ exercise, followed }: Running, now_ms: number): Session | undefined {
  const { session } = followed
  if (!isSession(session)) return undefined
  return { ...session, clock_s: Math.max(session.clock_s, exercise.endedAt_s ?? clockAt(exercise.clock, now_ms)) }
}
