import type { Unit } from '@/lib/units'
import { displayUnit } from './display-unit'
import { LOCALE } from './format-number'
import { UNIT_SPACE } from './unit-space'
import { say } from './say'
import type { UnitSystem } from './unit-system'

/** Finer than this nobody knows how much water lies in a pond. */
const SIGNIFICANT_DIGITS = 3
const MILLION = 1e6

const plain = new Intl.NumberFormat(LOCALE, { maximumSignificantDigits: SIGNIFICANT_DIGITS })

/**
 * How much water, or how large a surface, as far as it can be known: "about 326,000 gal", "about 212 million gal".
 *
 * @param value in `unit`, finite, 0 or more
 */
export function formatAbout(value: number, unit: Unit, system: UnitSystem): string {
  const { symbol, factor } = displayUnit(unit, system)
  return say('quantity.about', { quantity: wordsOf(value * factor) + UNIT_SPACE + symbol })
}

const wordsOf = (shown: number): string => {
  const rounded = Number(shown.toPrecision(SIGNIFICANT_DIGITS))
  return rounded >= MILLION ? say('quantity.million', { number: plain.format(rounded / MILLION) }) : plain.format(rounded)
}

const SQUARE_FEET_PER_ACRE = 43_560
const SQUARE_METRES_PER_HECTARE = 10_000

/** A surface of water as people say it: acres, or hectares. */
export function formatWaterSurface(surface_sqft: number, system: UnitSystem): string {
  const isUs = system === 'us'
  const value = isUs ? surface_sqft / SQUARE_FEET_PER_ACRE : (surface_sqft * displayUnit('sqft', system).factor) / SQUARE_METRES_PER_HECTARE
  const digits = value < 1 ? { maximumSignificantDigits: 2, maximumFractionDigits: 2 } : { maximumSignificantDigits: SIGNIFICANT_DIGITS }
  return new Intl.NumberFormat(LOCALE, { ...digits, ...(value < 0.1 && { maximumSignificantDigits: 1 }) }).format(value) + UNIT_SPACE + (isUs ? say('quantity.acre', { size: value <= 1 ? 1 : 2 }) : say('quantity.hectare'))
}
