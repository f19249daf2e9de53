import type { Fact } from '@/lib/plan'
import { say } from '../_text'
import '../_text/areas/exercise'

/** A short mark for each thing that came about, in order: troubles T1, T2, decisions D1, D2. */
export function factCodes(facts: readonly Fact[]): ReadonlyMap<string, string> {
  const counts = { inject: 0, decision: 0 }
  return new Map(facts.map(({ id, cause }) => [id, say(`exercise.code.${cause}`, { number: (counts[cause] += 1) })]))
}
