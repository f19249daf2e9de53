import type { Evidence, EvidenceMark } from '@/lib/evidence'

/** The number that is used while nobody has said, with how it is known. */
export type StandIn = { readonly value: number; readonly mark: EvidenceMark; readonly source?: string | undefined }

/** What was said about how figures are known: of this one while it was typed, and of the one before it in the same item. */
export type SaidMarks = { readonly chosen?: EvidenceMark | undefined; readonly usual?: EvidenceMark | undefined }

const isOffered = (value: number, standIn: StandIn | undefined): standIn is StandIn =>
  standIn !== undefined && standIn.mark !== 'computed' && Math.abs(value - standIn.value) <= 1e-9 * Math.max(1, Math.abs(value))

/**
 * How a typed figure is known by what has been said: of itself first; one that only repeats the number offered in the empty field
 * is known as that number is; else the way last said in the same item goes on.
 *
 * @returns undefined while nobody has said
 */
export function saidMark(value: number, standIn: StandIn | undefined, { chosen, usual }: SaidMarks): EvidenceMark | undefined {
  return chosen ?? (isOffered(value, standIn) ? standIn.mark : usual)
}

/** The evidence of a typed figure. Where nobody has said how it is known it counts as assumed: typing a number measures nothing. */
export function typedEvidence(value: number, standIn: StandIn | undefined, said: SaidMarks = {}): Evidence {
  const mark = saidMark(value, standIn, said) ?? 'assumed'
  const source = said.chosen === undefined && isOffered(value, standIn) ? standIn.source : undefined
  return { mark, ...(source !== undefined && source !== '' && { source }) }
}
