import type { Unit } from '@/lib/units'
import { displayUnit, type UnitSystem } from '../_text'

/** Round steps of an axis, in the unit shown. */
const STEPS = [1, 2, 5] as const

/**
 * Ticks of an axis from 0, at round numbers of the unit shown.
 *
 * @param most  end of the axis, in `unit`, above 0
 * @param count about how many
 * @returns values in `unit`
 */
export function ticksOf(most: number, unit: Unit, system: UnitSystem, count = 6): readonly number[] {
  const { factor } = displayUnit(unit, system)
  const shown = most * factor
  const rough = shown / count
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = (STEPS.find((one) => one * power >= rough) ?? 10) * power
  return Array.from({ length: Math.floor(shown / step + 1e-9) + 1 }, (_, index) => (index * step) / factor)
}
