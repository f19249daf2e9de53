import type { Evidence, EvidenceMark } from '@/lib/evidence'

/** The number that is used while nobody has said, with how it is known. */
export type StandIn = { readonly value: number; readonly mark: EvidenceMark; readonly source?: string | undefined }

/**
 * How a figure is known that somebody types without saying so: measured, for who types a figure has read it off something; but one
 * that only repeats the number offered in the empty field is known as that number is.
 *
 * @param chosen what was said while typing; goes before all else
 */
export function typedEvidence(value: number, standIn: StandIn | undefined, chosen?: EvidenceMark): Evidence {
  if (chosen) return { mark: chosen }
  const isOffered = standIn !== undefined && standIn.mark !== 'computed' && Math.abs(value - standIn.value) <= 1e-9 * Math.max(1, Math.abs(value))
  return isOffered ? { mark: standIn.mark, ...(standIn.source !== undefined && standIn.source !== '' && { source: standIn.source }) } : { mark: 'measured' }
}
