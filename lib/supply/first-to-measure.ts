import { compileShuttle, sustainableFlow } from '../shuttle'
import { findItemSchema, type Bundle, type EditableDocument } from '../plan'
import { compilePlan, type CompiledPlan } from './compile-plan'
import { numberKey } from './ledger'
import { pumpCapacity_gpm } from './pump-capacity'
import type { FirstToMeasure } from './result'

/**
 * These shift when supply begins. What they do to the flow afterwards is only how the tenders
 * happen to bunch, and no reason to measure them; the duration is a choice, not a measurement.
 */
const movesOnlyTheStart: ReadonlySet<string> = new Set(['turnout_s', 'setUp_s', 'pumpSetUp_s', 'firstLine_s', 'duration_s'])

/** No search takes longer than this many trials; the rest are passed over, least spread first. */
const MOST_TRIALS = 60

/**
 * The unmeasured number whose doubt moves the sustainable flow most: each is set to both ends
 * of its range, the others as they are, and the plan answered again.
 *
 * @returns the number with the flows at both ends, or null when none moves the flow by a gallon a minute
 */
export function firstToMeasure(compiled: CompiledPlan): FirstToMeasure | null {
  const { bundle, ledger } = compiled
  const trials = [...ledger.assumptions.values()]
    .map((assumption) => ({ assumption, spread: ledger.numbers.get(numberKey(assumption.itemId, assumption.field))?.spreadShare ?? 0 }))
    .filter(({ assumption, spread }) => spread > 0 && !movesOnlyTheStart.has(assumption.field))
    .sort((a, b) => b.spread - a.spread)
    .slice(0, MOST_TRIALS)
  let best: FirstToMeasure | null = null
  for (const { assumption: { itemId, field, value, mark }, spread } of trials) {
    const flows = [1 - spread, 1 + spread].flatMap((factor) => {
      const changed = withNumber(bundle, itemId, field, value * factor)
      return changed ? [flowOf(changed)] : []
    })
    if (flows.length < 2) continue
    const low_gpm = Math.min(...flows)
    const high_gpm = Math.max(...flows)
    if (high_gpm - low_gpm > (best ? best.high_gpm - best.low_gpm : 1)) best = { itemId, field, value, mark, spreadShare: spread, low_gpm, high_gpm }
  }
  return best
}

type Item = { id: string }

/** The bundle with one number of one item changed; undefined where no item keeps such a number. */
function withNumber(bundle: Bundle, itemId: string, field: string, value: number): Bundle | undefined {
  for (const docName of ['district', 'plan'] as const) {
    const doc = bundle[docName] as EditableDocument
    if (doc.id === itemId) return { ...bundle, [docName]: { ...doc, [field]: value } }
    for (const [collection, list] of Object.entries(doc)) {
      if (!Array.isArray(list)) continue
      const at = (list as Item[]).findIndex(({ id }) => id === itemId)
      if (at < 0) continue
      const next = { ...(list as Item[])[at], [field]: value }
      if (!findItemSchema(docName, collection)?.safeParse(next).success) return undefined
      return { ...bundle, [docName]: { ...doc, [collection]: (list as Item[]).with(at, next as Item) } }
    }
  }
  return undefined
}

function flowOf(bundle: Bundle): number {
  const compiled = compilePlan(bundle)
  if (!compiled.spec) return 0
  return Math.min(sustainableFlow(compileShuttle(compiled.spec)).flow_gpm, pumpCapacity_gpm(compiled))
}
