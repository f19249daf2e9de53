import type { ActAnswer } from './act-outbox'
import type { SeatAct } from './seat-messages'

/** A signal that comes and goes leaves requests hanging; asked again, they come through. */
const LONGEST_ms = 15_000
/** Answers that say nothing about the act itself. */
const PASSING = [401, 408, 421, 425, 429, 500, 502, 503, 504]

/** Sends one act of a seat to the station. */
export async function sendAct(act: SeatAct): Promise<ActAnswer> {
  const response = await fetch('/api/seat/acts', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(act), signal: AbortSignal.timeout(LONGEST_ms) })
  if (response.ok) return { kind: 'taken' }
  if (PASSING.includes(response.status)) return { kind: 'later' }
  const { error } = (await response.json().catch(() => ({}))) as { error?: { sentence?: string } }
  return error?.sentence === undefined ? { kind: 'later' } : { kind: 'refused', sentence: error.sentence }
}
