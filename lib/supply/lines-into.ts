import type { FillSite, Tender } from '../plan'

/** Lines that go into inlets of their own; more lines than inlets are joined before the tender. */
export function linesInto({ fillLine }: Pick<FillSite, 'fillLine'>, { fillInletCount = 1 }: Pick<Tender, 'fillInletCount'>): number {
  return Math.min(fillLine?.lineCount ?? 1, fillInletCount)
}
