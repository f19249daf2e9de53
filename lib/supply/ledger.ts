import { markOf, type Evidence, type EvidenceMark } from '../evidence'
import type { Default } from './defaults'
import type { Assumption } from './result'
import { spreadOfDefault, spreadOfEntered } from './spread'

/**
 * The numbers an answer was made of. Formulas get plain numbers; the ledger remembers how each
 * is known: `assumptions` those that nobody has measured, `numbers` all that may be doubted.
 *
 * `factors` is how doubt and what-if ask for another value: whatever is taken under a key comes
 * out multiplied by its factor, whoever uses it.
 */
export type Ledger = {
  readonly assumptions: Map<string, Assumption>
  readonly numbers: Map<string, TakenNumber>
  readonly factors: ReadonlyMap<string, number>
}

/** A number as it was taken, before any factor, with half the width of its range as a share of it. */
export type TakenNumber = {
  readonly itemId: string
  /** The other end, where the number belongs to the way between two places. */
  readonly otherId?: string
  readonly field: string
  readonly value: number
  readonly mark: EvidenceMark
  readonly isDefault: boolean
  readonly spreadShare: number
}

/**
 * An empty ledger.
 *
 * @param factors by `numberKey`: what a number is multiplied by when it is taken; absent: as it is
 */
export const startLedger = (factors: ReadonlyMap<string, number> = new Map()): Ledger => ({ assumptions: new Map(), numbers: new Map(), factors })

type Known = { readonly id: string; readonly evidence?: Readonly<Record<string, Evidence | undefined>> }

/** A number’s own key in a ledger. */
export const numberKey = (itemId: string, field: string): string => `${itemId}/${field}`

/**
 * A number of an item, or its default. What is not measured is noted.
 *
 * @param item  the item it belongs to
 * @param field its field, with unit
 * @param value what the item holds; absent: not known
 * @returns the number, times its factor when the ledger has one
 */
export function take(ledger: Ledger, item: Known, field: string, value: number | undefined, fallback: Default): number {
  const key = numberKey(item.id, field)
  if (value === undefined) {
    const mark = fallback.mark === 'measured' ? 'handbook' : fallback.mark
    ledger.assumptions.set(key, { itemId: item.id, field, value: fallback.value, mark, source: fallback.source, isDefault: true })
    return noted(ledger, key, { itemId: item.id, field, value: fallback.value, mark, isDefault: true, spreadShare: spreadOfDefault(fallback) })
  }
  const mark = markOf(item.evidence, field)
  if (mark !== 'measured') ledger.assumptions.set(key, { itemId: item.id, field, value, mark, source: item.evidence?.[field]?.source ?? '', isDefault: false })
  return takeKnown(ledger, item, field, value)
}

/**
 * A number that an item holds and that is no assumption of the answer, though it may be doubted:
 * a rating, a tank, a tested rate.
 *
 * @param spreadShare its range where the field's own rule does not say, as for what was worked out from others
 */
export function takeKnown(ledger: Ledger, item: Known, field: string, value: number, spreadShare = spreadOfEntered(item.evidence?.[field], field)): number {
  return noted(ledger, numberKey(item.id, field), { itemId: item.id, field, value, mark: markOf(item.evidence, field), isDefault: false, spreadShare })
}

/** A default that is said in an issue of its own rather than listed among the assumptions, though it may be doubted. */
export function takeDefault(ledger: Ledger, itemId: string, field: string, fallback: Default): number {
  return noted(ledger, numberKey(itemId, field), { itemId, field, value: fallback.value, mark: fallback.mark, isDefault: true, spreadShare: spreadOfDefault(fallback) })
}

/** Notes a number under a key of its own and applies the factor asked for it. A share stays a share. */
export function noted(ledger: Ledger, key: string, number: TakenNumber): number {
  ledger.numbers.set(key, number)
  const factor = ledger.factors.get(key)
  if (factor === undefined) return number.value
  return number.field.endsWith('Share') ? Math.min(1, number.value * factor) : number.value * factor
}
