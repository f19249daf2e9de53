import {
  FEET_PER_MILE, GALLONS_PER_CUBIC_FOOT, KILOGRAMS_PER_POUND, LITRES_PER_GALLON, METRES_PER_FOOT, METRES_PER_MILE,
  PASCALS_PER_INCH_OF_MERCURY, PASCALS_PER_PSI,
} from './units'
import type { Unit } from './units'

/** Exact by definition: 1 bar = 100 kPa. */
export const KILOPASCALS_PER_BAR = 100

/** A unit that a person may write: inside = written × factor + offset. */
export type WrittenUnit = { readonly words: readonly string[]; readonly factor: number; readonly offset?: number }

const LITRES_PER_CUBIC_METRE = 1000
const SQUARE_FEET_PER_ACRE = 43_560
const SQUARE_METRES_PER_HECTARE = 10_000
const POUNDS_PER_SHORT_TON = 2000
const KILOGRAMS_PER_TONNE = 1000
const MILLIMETRES_PER_INCH = METRES_PER_FOOT * 1000 / 12

const feet = ['ft', 'foot', 'feet', "'"]
const inches = ['in', 'inch', 'inches', '"']
const metres = ['m', 'metre', 'metres', 'meter', 'meters']
const miles = ['mi', 'mile', 'miles']
const kilometres = ['km', 'kilometre', 'kilometres', 'kilometer', 'kilometers']
const gallons = ['gal', 'gals', 'gallon', 'gallons']
const litres = ['l', 'litre', 'litres', 'liter', 'liters']
const cubicMetres = ['m3', 'm³']
const cubicFeet = ['cuft', 'ft3', 'ft³', 'cubicfeet']

/** Units understood for each quantity whatever the system in use. Words are lower case, without spaces or full stops. */
export const writtenUnits: Readonly<Record<Unit, readonly WrittenUnit[]>> = {
  gal: [
    { words: gallons, factor: 1 },
    { words: litres, factor: 1 / LITRES_PER_GALLON },
    { words: cubicMetres, factor: LITRES_PER_CUBIC_METRE / LITRES_PER_GALLON },
    { words: cubicFeet, factor: GALLONS_PER_CUBIC_FOOT },
  ],
  gpm: [
    { words: ['gpm', 'gal/min', 'gallons/min'], factor: 1 },
    { words: ['l/min', 'lpm', 'litres/min', 'liters/min'], factor: 1 / LITRES_PER_GALLON },
    { words: ['l/s', 'lps'], factor: 60 / LITRES_PER_GALLON },
    { words: ['m3/h', 'm³/h'], factor: LITRES_PER_CUBIC_METRE / LITRES_PER_GALLON / 60 },
  ],
  psi: [
    { words: ['psi'], factor: 1 },
    { words: ['kpa'], factor: 1000 / PASCALS_PER_PSI },
    { words: ['bar', 'bars'], factor: (KILOPASCALS_PER_BAR * 1000) / PASCALS_PER_PSI },
  ],
  ft: [
    { words: feet, factor: 1 },
    { words: inches, factor: 1 / 12 },
    { words: metres, factor: 1 / METRES_PER_FOOT },
    { words: ['cm'], factor: 0.01 / METRES_PER_FOOT },
    { words: ['mm'], factor: 0.001 / METRES_PER_FOOT },
    { words: ['yd', 'yard', 'yards'], factor: 3 },
    { words: miles, factor: FEET_PER_MILE },
    { words: kilometres, factor: 1000 / METRES_PER_FOOT },
  ],
  in: [
    { words: inches, factor: 1 },
    { words: ['mm'], factor: 1 / MILLIMETRES_PER_INCH },
    { words: ['cm'], factor: 10 / MILLIMETRES_PER_INCH },
    { words: feet, factor: 12 },
    { words: metres, factor: 1000 / MILLIMETRES_PER_INCH },
  ],
  mi: [
    { words: miles, factor: 1 },
    { words: kilometres, factor: 1000 / METRES_PER_MILE },
    { words: feet, factor: 1 / FEET_PER_MILE },
    { words: metres, factor: 1 / METRES_PER_MILE },
  ],
  mph: [
    { words: ['mph', 'mi/h'], factor: 1 },
    { words: ['km/h', 'kmh', 'kph'], factor: 1000 / METRES_PER_MILE },
  ],
  lb: [
    { words: ['lb', 'lbs', 'pound', 'pounds'], factor: 1 },
    { words: ['kg', 'kgs', 'kilogram', 'kilograms'], factor: 1 / KILOGRAMS_PER_POUND },
    { words: ['tonne', 'tonnes'], factor: KILOGRAMS_PER_TONNE / KILOGRAMS_PER_POUND },
    { words: ['shortton', 'shorttons', 'uston', 'ustons'], factor: POUNDS_PER_SHORT_TON },
  ],
  inHg: [
    { words: ['inhg', '"hg'], factor: 1 },
    { words: ['kpa'], factor: 1000 / PASCALS_PER_INCH_OF_MERCURY },
    { words: ['mbar', 'hpa'], factor: 100 / PASCALS_PER_INCH_OF_MERCURY },
    { words: ['bar'], factor: 100_000 / PASCALS_PER_INCH_OF_MERCURY },
    { words: ['mmhg'], factor: 1 / MILLIMETRES_PER_INCH },
  ],
  degF: [
    { words: ['°f', 'f', 'degf'], factor: 1 },
    { words: ['°c', 'c', 'degc'], factor: 1.8, offset: 32 },
  ],
  s: [
    { words: ['min', 'mins', 'minute', 'minutes'], factor: 60 },
    { words: ['s', 'sec', 'secs', 'second', 'seconds'], factor: 1 },
    { words: ['h', 'hr', 'hrs', 'hour', 'hours'], factor: 3600 },
  ],
  sqft: [
    { words: ['sqft', 'ft2', 'ft²', 'squarefeet'], factor: 1 },
    { words: ['m2', 'm²', 'sqm'], factor: 1 / METRES_PER_FOOT ** 2 },
    { words: ['ac', 'acre', 'acres'], factor: SQUARE_FEET_PER_ACRE },
    { words: ['ha', 'hectare', 'hectares'], factor: SQUARE_METRES_PER_HECTARE / METRES_PER_FOOT ** 2 },
  ],
  cuft: [
    { words: cubicFeet, factor: 1 },
    { words: cubicMetres, factor: 1 / METRES_PER_FOOT ** 3 },
    { words: gallons, factor: 1 / GALLONS_PER_CUBIC_FOOT },
    { words: litres, factor: 1 / (GALLONS_PER_CUBIC_FOOT * LITRES_PER_GALLON) },
  ],
}

/** A typed unit made comparable: lower case, marks for feet and inches made one, spaces and full stops dropped. */
export function plainUnitWord(text: string): string {
  return text.toLowerCase().replace(/[\s.\u00a0\u202f]/g, '').replace(/''|″|”|“/g, '"').replace(/[′’‘]/g, "'").replace('º', '°')
}

/** Unit of that word for a quantity, or undefined. */
export function findWrittenUnit(word: string, unit: Unit): WrittenUnit | undefined {
  return writtenUnits[unit].find(({ words }) => words.includes(word))
}
