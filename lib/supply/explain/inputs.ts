import { findUnit } from '../../units'
import type { Ledger } from '../ledger'
import type { Working, WorkingInput } from '../working'
import type { Evidence } from '../../evidence'

type Known = { readonly id: string; readonly evidence?: Readonly<Record<string, Evidence | undefined>> }

/**
 * A number of an item as an input: with the mark and source it has in the ledger, or as measured.
 *
 * @param path where its evidence is kept, for a number of a part of the item: "supplyLine.size_in"
 */
export function given(ledger: Ledger, item: Known, field: string, value: number, symbol = field, path = field): WorkingInput {
  const noted = ledger.assumptions.get(`${item.id}/${field}`)
  const evidence = item.evidence?.[path]
  return {
    symbol, value,
    unit: findUnit(field) ?? '',
    from: { itemId: item.id, field, mark: noted?.mark ?? evidence?.mark ?? 'assumed', source: noted?.source ?? evidence?.source ?? '' },
  }
}

/** A number that stands in no document: of a run, or a constant of a law. */
export const computed = (symbol: string, value: number, source = ''): WorkingInput => ({
  symbol, value, unit: findUnit(symbol) ?? '', from: { itemId: '', field: symbol, mark: 'computed', source },
})

/** The outcome of another law as an input. */
export const worked = (symbol: string, working: Working): WorkingInput => ({ symbol, value: working.value, unit: working.unit, from: working })

/**
 * A figure with what it was worked out from.
 *
 * @param field names its unit at the end
 * @param source of the law, in words
 */
export function working(law: string, field: string, value: number, source: string, inputs: readonly WorkingInput[]): Working {
  return { law, value, unit: findUnit(field) ?? '', source, inputs }
}
