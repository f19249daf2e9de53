import { asJson, PASSING } from '../_client/ask-station'
import type { ActAnswer } from './act-outbox'
import type { SeatAct } from './seat-messages'

/** A signal that comes and goes leaves requests hanging; asked again, they come through. */
const LONGEST_ms = 15_000
/** Answers that say nothing about the act itself. */
const LATER = [...PASSING, 421]

/** Sends one act of a seat to the station. */
export async function sendAct(act: SeatAct): Promise<ActAnswer> {
  const response = await fetch('/api/seat/acts', { ...asJson(act), signal: AbortSignal.timeout(LONGEST_ms) })
  if (response.ok) return { kind: 'taken' }
  if (LATER.includes(response.status)) return { kind: 'later' }
  const { error } = (await response.json().catch(() => ({}))) as { error?: { sentence?: string } }
  return error?.sentence === undefined ? { kind: 'later' } : { kind: 'refused', sentence: error.sentence }
}
