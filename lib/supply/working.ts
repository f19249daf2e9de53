import type { EvidenceMark } from '../evidence'
import type { Unit } from '../units'

/**
 * How one figure came about: the law, its inputs, and where each of them came from, down to
 * the numbers somebody entered. Words of the law and the symbols live in the message files.
 */
export type Working = {
  /** Code of the law; its words and formula are in the message files under it. */
  readonly law: string
  readonly value: number
  readonly unit: Unit | ''
  readonly source: string
  readonly inputs: readonly WorkingInput[]
}

export type WorkingInput = {
  /** Name of the quantity in the formula, such as `lift_ft`. */
  readonly symbol: string
  readonly value: number
  readonly unit: Unit | ''
  readonly from: WorkingSource | Working
}

/** A number somebody entered, or a default nobody has replaced. */
export type WorkingSource = {
  readonly itemId: string
  readonly field: string
  readonly mark: EvidenceMark
  readonly source: string
}

export const isWorking = (from: WorkingSource | Working): from is Working => 'law' in from
