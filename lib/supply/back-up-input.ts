import type { EvidenceMark } from '../evidence'
import type { Unit } from '../units'

/** A number the back-up prime stands on: what is used, how far it may be off, how it is known. */
export type BackUpInput = {
  readonly symbol: string
  readonly value: number
  readonly unit: Unit | ''
  readonly low: number
  readonly high: number
  readonly mark: EvidenceMark
  readonly source: string
}
