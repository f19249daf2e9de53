import { markOf, type Evidence } from '../evidence'
import type { Default } from './defaults'
import type { Assumption } from './result'

/**
 * The numbers an answer was made of. Formulas get plain numbers; the ledger remembers which
 * of them nobody has measured.
 */
export type Ledger = { readonly assumptions: Map<string, Assumption> }

export const startLedger = (): Ledger => ({ assumptions: new Map() })

type Known = { readonly id: string; readonly evidence?: Readonly<Record<string, Evidence | undefined>> }

/**
 * A number of an item, or its default. What is not measured is noted.
 *
 * @param item  the item it belongs to
 * @param field its field, with unit
 * @param value what the item holds; absent: not known
 */
export function take(ledger: Ledger, item: Known, field: string, value: number | undefined, fallback: Default): number {
  const key = `${item.id}/${field}`
  if (value === undefined) {
    ledger.assumptions.set(key, { itemId: item.id, field, value: fallback.value, mark: fallback.mark === 'measured' ? 'handbook' : fallback.mark, source: fallback.source, isDefault: true })
    return fallback.value
  }
  const mark = markOf(item.evidence, field)
  if (mark !== 'measured') ledger.assumptions.set(key, { itemId: item.id, field, value, mark, source: item.evidence?.[field]?.source ?? '', isDefault: false })
  return value
}
