import { requireThat } from '@/lib/issue'
import type { Unit } from '@/lib/units'
import { displayUnit } from './display-unit'
import { formatNumber } from './format-number'
import { formatMinutes, formatTime } from './format-time'
import { decimalsFor, findHeadlineStep, roundTo } from './rounding'
import type { Toward } from './rounding'
import { say } from './say'
import { UNIT_SPACE } from './unit-space'
import type { UnitSystem } from './unit-system'

export type QuantityFormat = {
  /** Decimals to show instead of the unit's own; trailing zeros are then kept. */
  digits?: number
  /**
   * `plain`: what was typed, as it was typed. `headline`: what is worked out; flows and volumes to the steps of
   * `rounding.ts`, times to the minute. `working`: one decimal more than plain.
   */
  style?: 'plain' | 'headline' | 'working'
  /** Where a headline rounds to. What a layout promises goes down, what is asked of it goes up: `format-figure.ts`. */
  toward?: Toward
}

/**
 * A quantity as shown, with its unit: "640 gpm", "2,420 L/min", "14 min".
 *
 * @param value in `unit`, finite; undefined says that it is not known
 * @throws RangeError if the value is not finite
 */
export function formatQuantity(value: number | undefined, unit: Unit, system: UnitSystem, format: QuantityFormat = {}): string {
  if (value === undefined) return say('quantity.unknown')
  if (unit === 's' && format.digits === undefined) {
    requireThat(Number.isFinite(value), 'value', value, 'a finite number')
    return format.style === 'headline' ? formatMinutes(value, format.toward) : formatTime(value)
  }
  return formatValue(value, unit, system, format) + UNIT_SPACE + displayUnit(unit, system).symbol
}

/** The number of `formatQuantity` without its unit, for columns whose head names it. */
export function formatValue(value: number, unit: Unit, system: UnitSystem, format: QuantityFormat = {}): string {
  requireThat(Number.isFinite(value), 'value', value, 'a finite number')
  const { factor, offset } = displayUnit(unit, system)
  const shown = value * factor + offset
  if (format.digits !== undefined) return formatNumber(shown, format.digits, true)
  const decimals = decimalsFor(shown, unit, system)
  if (format.style === 'working') return formatNumber(shown, decimals + 1)
  if (format.style !== 'headline') return formatNumber(shown, decimals)
  return formatNumber(roundTo(shown, findHeadlineStep(shown, unit, system, format.toward) ?? 10 ** -decimals, format.toward), decimals)
}

/**
 * A stored value as text for an entry field, without its unit and precise enough
 * that leaving the field untouched changes nothing that matters.
 */
export function entryText(value: number, unit: Unit, system: UnitSystem): string {
  requireThat(Number.isFinite(value), 'value', value, 'a finite number')
  if (unit === 's') {
    const total = Math.round(value)
    return total % 60 ? `${Math.floor(total / 60)}:${String(total % 60).padStart(2, '0')}` : String(total / 60)
  }
  const { factor, offset } = displayUnit(unit, system)
  const shown = value * factor + offset
  return formatNumber(shown, decimalsFor(shown, unit, system) + 1)
}
