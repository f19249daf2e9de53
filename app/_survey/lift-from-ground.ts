import type { DraftSite, Source } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import type { GroundHeight } from '@/lib/terrain'

export type GroundLift = {
  readonly bank: GroundHeight
  readonly surface: GroundHeight
  readonly lift_ft: number
  /** How far the lift may be off: √(bank² + surface²), which credits nothing for both being off the same way. */
  readonly doubt_ft: number
  /** The doubt is no more than the lift. */
  readonly isPromise: boolean
}

/**
 * Lift at a draft site by the heights of the ground at its bank and at its source.
 *
 *   lift = bank + intake height − water surface      doubt = √(bank² + surface²)
 *
 * @returns undefined where either height is missing, and where one is so near sea level that its doubt is more than itself
 */
export function liftFromGround({ intakeHeight_ft }: Pick<DraftSite, 'intakeHeight_ft'>, bank: GroundHeight | undefined, surface: GroundHeight | undefined): GroundLift | undefined {
  if (!bank || !surface || [bank, surface].some(({ height_ft, doubt_ft }) => doubt_ft >= Math.abs(height_ft))) return undefined
  const lift_ft = bank.height_ft + (intakeHeight_ft ?? defaults.intakeHeight_ft.value) - surface.height_ft
  const doubt_ft = Math.hypot(bank.doubt_ft, surface.doubt_ft)
  return { bank, surface, lift_ft, doubt_ft, isPromise: lift_ft >= doubt_ft }
}

/** Whether the heights of a site may be read from elevation data: nothing has been measured or entered that they would replace. */
export function canReadGround({ lift_ft, bankElevation_ft, evidence }: DraftSite, source: Source | undefined): source is Source {
  if (!source || lift_ft !== undefined) return false
  const isFree = (value: number | undefined, mark: { mark: string; spreadShare?: number } | undefined) => value === undefined || (mark?.mark === 'computed' && mark.spreadShare !== undefined)
  return isFree(bankElevation_ft, evidence?.bankElevation_ft) && isFree(source.surfaceElevation_ft, source.evidence?.surfaceElevation_ft)
}
