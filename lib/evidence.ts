/** How a number is known, strongest first. A field with no evidence is assumed. */
export const evidenceMarks = ['measured', 'computed', 'handbook', 'assumed'] as const
export type EvidenceMark = (typeof evidenceMarks)[number]

/**
 * Where one number came from. Formulas never see it; doubt and advice read it.
 *
 * `spreadShare` is half the width of the range the number may lie in, as a share of it.
 * `entered` keeps what was typed, in the unit it was typed.
 */
export type Evidence = {
  mark: EvidenceMark
  by?: string
  on?: string
  source?: string
  spreadShare?: number
  entered?: string
}

/** Mark of a field; absent evidence is assumed. */
export function markOf(evidence: Readonly<Record<string, Evidence | undefined>> | undefined, field: string): EvidenceMark {
  return evidence?.[field]?.mark ?? 'assumed'
}
