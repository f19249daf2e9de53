import type { Unit } from '@/lib/units'
import { displayUnit, type UnitSystem } from '../_text'

/** A dial's tick: where it stands, in the dial's own unit, and what is written at it in the units in use. */
export type Tick = { readonly at: number; readonly label: string }

const nice = [0.5, 1, 2, 2.5, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000] as const

/** Round numbers in the units in use, up to the end of a scale, five at most. */
export function ticksTo(end: number, unit: Unit, system: UnitSystem): Tick[] {
  const { factor } = displayUnit(unit, system)
  const last = end * factor
  const step = nice.find((one) => last / one <= 5.01) ?? last
  const ticks: Tick[] = []
  for (let shown = step; shown <= last * 1.001; shown += step) ticks.push({ at: shown / factor, label: String(Number(shown.toFixed(1))) })
  return ticks
}

export const VACUUM_END_INHG = 30
export const INTAKE_END_PSI = 60
export const DISCHARGE_END_PSI = 250
/** Needles sweep this far to each side of straight up. */
const SWEEP_DEG = 120

/** Angle of the intake's needle: zero straight up, vacuum to the left, pressure to the right. `gauge` is psi above zero and inHg below it. */
export const intakeAngle_deg = (gauge: number): number =>
  gauge < 0 ? -Math.min(1, -gauge / VACUUM_END_INHG) * SWEEP_DEG : Math.min(1, gauge / INTAKE_END_PSI) * SWEEP_DEG

/** Angle of the discharge's needle: zero at the left end. */
export const dischargeAngle_deg = (pressure_psi: number): number =>
  -SWEEP_DEG + Math.min(1, Math.max(0, pressure_psi) / DISCHARGE_END_PSI) * 2 * SWEEP_DEG
