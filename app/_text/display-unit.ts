import { metricDisplay, usSymbol } from '@/lib/units'
import type { Unit } from '@/lib/units'
import { KILOPASCALS_PER_BAR } from '@/lib/written-units'
import type { UnitSystem } from './unit-system'

/** What a quantity is shown in: shown = inside × factor + offset. */
export type DisplayUnit = { readonly symbol: string; readonly factor: number; readonly offset: number }

/**
 * Unit that a quantity is shown in. Vacuum stays in kPa under `metric-bar`: a bar is too coarse for it.
 */
export function displayUnit(unit: Unit, system: UnitSystem): DisplayUnit {
  if (system === 'us') return { symbol: usSymbol[unit], factor: 1, offset: 0 }
  const metric = metricDisplay[unit]
  if (system === 'metric-bar' && unit === 'psi') {
    return { symbol: 'bar', factor: metric.factor / KILOPASCALS_PER_BAR, offset: 0 }
  }
  return metric
}

/** Symbol beside an entry field. Times are typed in minutes. */
export function entrySymbol(unit: Unit, system: UnitSystem): string {
  return unit === 's' ? 'min' : displayUnit(unit, system).symbol
}
