import type { EvidenceMark } from '../evidence'
import { numberKey, type CompiledPlan, type TakenNumber } from '../supply'

/**
 * One thing that is not known exactly and stays as it is all night: a pump's ability, a road's
 * speed, a crew's time. Its factor is triangular between 1 − spread and 1 + spread, 1 the likeliest.
 */
export type DoubtInput = {
  /** Address of its chance; the same in every variant of a plan that holds it. */
  readonly key: string
  readonly field: string
  /** Whose number it is, most items first in the order of the plan; a default nobody replaced may belong to many. */
  readonly itemIds: readonly string[]
  /** The other end, where it is the way between two places. */
  readonly otherId?: string
  readonly value: number
  readonly mark: EvidenceMark
  readonly isDefault: boolean
  /** Half its range as a share of it, 0 to `WIDEST_SPREAD`. */
  readonly spreadShare: number
  /** Keys of the ledger that its factor is applied to. */
  readonly numberKeys: readonly string[]
}

/** A factor of 0 would say that there may be no pump or no road at all, which is a loss and not a doubt. */
const WIDEST_SPREAD = 0.9

/** Choices of whoever plans, not things to be found out. */
const chosen: ReadonlySet<string> = new Set(['duration_s'])

/**
 * The inputs of a plan that doubt moves: every number its answer was made of whose range has a width.
 *
 * A default that several items fall back on is one input: if the handbook is off, it is off for all of
 * them alike. Once an item has its own number, that is an input of its own.
 *
 * @returns in the order in which the plan takes them
 */
export function doubtInputs({ ledger }: Pick<CompiledPlan, 'ledger'>): DoubtInput[] {
  const inputs = new Map<string, DoubtInput>()
  for (const [numberId, number] of ledger.numbers) {
    if (number.spreadShare <= 0 || chosen.has(number.field)) continue
    const key = keyOf(numberId, number)
    const known = inputs.get(key)
    if (known) inputs.set(key, { ...known, itemIds: [...known.itemIds, number.itemId], numberKeys: [...known.numberKeys, numberId] })
    else inputs.set(key, inputFrom(key, numberId, number))
  }
  return [...inputs.values()]
}

/** A road's key is its own; a shared default stands under its field and value. */
const keyOf = (numberId: string, { isDefault, itemId, field, value }: TakenNumber): string =>
  isDefault && numberId === numberKey(itemId, field) ? `default/${field}=${value}` : numberId

function inputFrom(key: string, numberId: string, { itemId, otherId, field, value, mark, isDefault, spreadShare }: TakenNumber): DoubtInput {
  return {
    key, field, value, mark, isDefault,
    itemIds: [itemId],
    ...(otherId !== undefined && { otherId }),
    spreadShare: Math.min(WIDEST_SPREAD, spreadShare),
    numberKeys: [numberId],
  }
}
