import type { Difference } from './why-different'

/** The part that cost most water, where it cost more than the log can be off by; else none stands out. */
export function costMost({ parts, bound_gpm }: Difference): Difference['parts'][number] | undefined {
  const worst = parts.reduce<Difference['parts'][number] | undefined>((least, part) => (least && least.gpm <= part.gpm ? least : part), undefined)
  return worst && -worst.gpm > bound_gpm ? worst : undefined
}
