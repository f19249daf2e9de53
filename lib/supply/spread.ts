import type { Evidence, EvidenceMark } from '../evidence'
import type { Default } from './defaults'

/** How far a number may be off when nobody has said, by its mark. Common practice, no source. */
export const spreadByMark: Readonly<Record<EvidenceMark, number>> = { measured: 0.05, computed: 0.1, handbook: 0.15, assumed: 0.3 }

/**
 * Numbers that stand on a plate or a coupling: whoever enters them has read them, marked or not. A rating is
 * what the pump did when it was new. Common practice, no source.
 */
const plateSpread: Readonly<Record<string, number>> = { tank_gal: 0.05, rated_gpm: 0.1, capacity_gal: 0.05, tankCapacity_gal: 0.05, suction_in: 0, suction_ft: 0 }

/** A number somebody entered without saying how it is known. */
const ENTERED_SPREAD = 0.15

/** Half the range of a default, as a share of it. */
export const spreadOfDefault = ({ spreadShare }: Default): number => spreadShare

/** Half the range of a number that an item holds: its own spread, else the plate's, else that of its mark. */
export function spreadOfEntered(evidence: Evidence | undefined, field: string): number {
  if (evidence?.spreadShare !== undefined) return evidence.spreadShare
  if (evidence?.mark === 'measured') return Math.min(spreadByMark.measured, plateSpread[field] ?? spreadByMark.measured)
  return plateSpread[field] ?? (evidence ? spreadByMark[evidence.mark] : ENTERED_SPREAD)
}
