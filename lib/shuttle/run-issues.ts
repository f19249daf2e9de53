import { issue, type Issue } from '../issue'
import type { ShuttleRun } from './shuttle-run'

/**
 * Bad news in a run.
 *
 * @returns `supply-never-ready` (block), `water-gap`, `flow-short`, `draft-lost`, `source-empty`, `lay-source-empty` (warn)
 */
export function runIssues(run: Omit<ShuttleRun, 'issues'>): Issue[] {
  const issues: Issue[] = []
  const { supplyReady_s, engineEmpty_s, gap_s, end_s } = run
  if (supplyReady_s === undefined) {
    const unready = run.dumps.filter((dump) => dump.supplyReady_s === undefined).map(({ id }) => id)
    issues.push(issue('supply-never-ready', 'block', unready, { end_s }))
  }
  if (gap_s !== undefined && gap_s > 0) {
    issues.push(issue('water-gap', 'warn', [], { from_s: engineEmpty_s ?? 0, to_s: supplyReady_s ?? end_s, gap_s }))
  }
  if (run.shortSinceReady_s > 0) {
    issues.push(issue('flow-short', 'warn', [], { short_s: run.shortSinceReady_s, short_gal: run.demanded_gal - run.delivered_gal }))
  }
  for (const dump of run.dumps) {
    if (dump.draftLossCount === 0) continue
    issues.push(issue('draft-lost', 'warn', [dump.id], { draftLossCount: dump.draftLossCount, draftLost_s: dump.draftLost_s }))
  }
  for (const fill of run.fills) {
    if (fill.sourceEmptyFrom_s === undefined) continue
    const { sourceEmptyFrom_s: from_s, sourceEmpty_s, drawn_gal } = fill
    issues.push(issue('source-empty', 'warn', [fill.id], { from_s, sourceEmpty_s, drawn_gal }))
  }
  for (const { id, sourceEmptyFrom_s: from_s, left_gpm = 0 } of run.feeds ?? []) {
    if (from_s !== undefined) issues.push(issue('lay-source-empty', 'warn', [id], { from_s, left_gpm }))
  }
  return issues
}
