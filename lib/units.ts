/**
 * The units of the project, and the only place where one is turned into another.
 *
 * One unit per quantity inside: US customary, because every standard and form of
 * this trade is written in it. Metric is a choice of display and entry.
 */

/** A unit a field name may end in. Time is seconds inside, minutes on screen. */
export type Unit = 'gal' | 'gpm' | 'psi' | 'ft' | 'in' | 'mi' | 'mph' | 'lb' | 'inHg' | 'degF' | 's' | 'sqft' | 'cuft'

export const units: readonly Unit[] = ['gal', 'gpm', 'psi', 'ft', 'in', 'mi', 'mph', 'lb', 'inHg', 'degF', 's', 'sqft', 'cuft']

/** Unit at the end of a field name, or undefined if the field is no quantity. */
export function findUnit(field: string): Unit | undefined {
  const at = field.lastIndexOf('_')
  if (at < 0) return undefined
  const tail = field.slice(at + 1)
  return units.find((unit) => unit === tail)
}

/** Exact by definition: 1 ft = 0.3048 m. */
export const METRES_PER_FOOT = 0.3048
/** Exact by definition: 1 mi = 5,280 ft. */
export const FEET_PER_MILE = 5280
export const METRES_PER_MILE = METRES_PER_FOOT * FEET_PER_MILE
/** Exact by definition: 1 US gal = 231 cubic inches = 3.785411784 L. */
export const LITRES_PER_GALLON = 3.785411784
export const GALLONS_PER_CUBIC_FOOT = 1728 / 231
/** Exact by definition: 1 lb = 0.45359237 kg. */
export const KILOGRAMS_PER_POUND = 0.45359237
/** 1 psi = 1 lbf over 1 square inch, from the exact pound and foot and g = 9.80665 m/s². */
export const PASCALS_PER_PSI = (KILOGRAMS_PER_POUND * 9.80665) / (METRES_PER_FOOT / 12) ** 2
/** Conventional inch of mercury at 32 °F. Source: NIST SP 811, table B.8. */
export const PASCALS_PER_INCH_OF_MERCURY = 3386.389
/** Water at 60 °F, 62.37 lb per cubic foot: 2.309 ft of water a psi. */
export const POUNDS_PER_CUBIC_FOOT_OF_WATER = 62.37
export const FEET_OF_WATER_PER_PSI = 144 / POUNDS_PER_CUBIC_FOOT_OF_WATER
/** 0.433 psi a foot of water. */
export const PSI_PER_FOOT_OF_WATER = 1 / FEET_OF_WATER_PER_PSI
/** 1.134 ft of water an inch of mercury. */
export const FEET_OF_WATER_PER_INCH_OF_MERCURY = (PASCALS_PER_INCH_OF_MERCURY / PASCALS_PER_PSI) * FEET_OF_WATER_PER_PSI
export const SECONDS_PER_MINUTE = 60

export const feetFromMetres = (metres: number): number => metres / METRES_PER_FOOT
export const metresFromFeet = (feet: number): number => feet * METRES_PER_FOOT
export const milesFromMetres = (metres: number): number => metres / METRES_PER_MILE
export const poundsFromKilograms = (kilograms: number): number => kilograms / KILOGRAMS_PER_POUND
export const fahrenheitFromCelsius = (celsius: number): number => celsius * 1.8 + 32
export const celsiusFromFahrenheit = (fahrenheit: number): number => (fahrenheit - 32) / 1.8
export const feetOfWaterFromPsi = (psi: number): number => psi * FEET_OF_WATER_PER_PSI
export const psiFromFeetOfWater = (feet: number): number => feet * PSI_PER_FOOT_OF_WATER
export const feetOfWaterFromInchesOfMercury = (inHg: number): number => inHg * FEET_OF_WATER_PER_INCH_OF_MERCURY
export const inchesOfMercuryFromFeetOfWater = (feet: number): number => feet / FEET_OF_WATER_PER_INCH_OF_MERCURY

/** A unit of the metric display for each unit inside, with the line that takes one to the other: shown = inside × factor + offset. */
export const metricDisplay: Readonly<Record<Unit, { symbol: string; factor: number; offset: number }>> = {
  gal: { symbol: 'L', factor: LITRES_PER_GALLON, offset: 0 },
  gpm: { symbol: 'L/min', factor: LITRES_PER_GALLON, offset: 0 },
  psi: { symbol: 'kPa', factor: PASCALS_PER_PSI / 1000, offset: 0 },
  ft: { symbol: 'm', factor: METRES_PER_FOOT, offset: 0 },
  in: { symbol: 'mm', factor: 25.4, offset: 0 },
  mi: { symbol: 'km', factor: METRES_PER_MILE / 1000, offset: 0 },
  mph: { symbol: 'km/h', factor: METRES_PER_MILE / 1000, offset: 0 },
  lb: { symbol: 'kg', factor: KILOGRAMS_PER_POUND, offset: 0 },
  inHg: { symbol: 'kPa', factor: PASCALS_PER_INCH_OF_MERCURY / 1000, offset: 0 },
  degF: { symbol: '°C', factor: 1 / 1.8, offset: -32 / 1.8 },
  s: { symbol: 's', factor: 1, offset: 0 },
  sqft: { symbol: 'm²', factor: METRES_PER_FOOT ** 2, offset: 0 },
  cuft: { symbol: 'm³', factor: METRES_PER_FOOT ** 3, offset: 0 },
}

export const usSymbol: Readonly<Record<Unit, string>> = {
  gal: 'gal', gpm: 'gpm', psi: 'psi', ft: 'ft', in: 'in', mi: 'mi', mph: 'mph', lb: 'lb', inHg: 'inHg', degF: '°F', s: 's', sqft: 'sq ft', cuft: 'cu ft',
}
