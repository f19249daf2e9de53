import { feetFromMetres, KILOGRAMS_PER_POUND, METRES_PER_MILE, poundsFromKilograms } from '../units'

/**
 * What a tag says of a limit. `unknown` is never `none`: a missing or unreadable posting
 * promises nothing, while `none` is somebody's statement that there is no posting.
 */
export type PostedLimit =
  | { readonly state: 'limit'; readonly value: number }
  | { readonly state: 'none' }
  | { readonly state: 'unknown' }

const unknown: PostedLimit = { state: 'unknown' }
const none: PostedLimit = { state: 'none' }
const limit = (value: number): PostedLimit => (Number.isFinite(value) && value > 0 ? { state: 'limit', value } : unknown)

/** A decimal number with point or comma; neither thousands nor signs. */
const decimal = (text: string): number => (/^\d{1,6}([.,]\d{1,3})?$/.test(text) ? Number(text.replace(',', '.')) : NaN)

/** The smallest of several values parted by semicolons, as some tags hold; `none` only if all say so. */
function strictest(text: string | undefined, parse: (part: string) => PostedLimit): PostedLimit {
  if (text === undefined) return unknown
  const limits = text.split(';').map((part) => parse(part.trim().toLowerCase()))
  const values = limits.flatMap((found) => (found.state === 'limit' ? [found.value] : []))
  if (values.length > 0) return { state: 'limit', value: Math.min(...values) }
  return limits.every(({ state }) => state === 'none') ? none : unknown
}

const POUNDS_PER_SHORT_TON = 2000
const POUNDS_PER_LONG_TON = 2240
const POUNDS_PER_HUNDREDWEIGHT = 112

const poundsPerUnit: Readonly<Record<string, number>> = {
  '': poundsFromKilograms(1000), t: poundsFromKilograms(1000), to: poundsFromKilograms(1000), mt: poundsFromKilograms(1000),
  tonne: poundsFromKilograms(1000), tonnes: poundsFromKilograms(1000),
  // "ton" may be any of three; the lightest is the safe reading.
  ton: POUNDS_PER_SHORT_TON, tons: POUNDS_PER_SHORT_TON,
  kg: 1 / KILOGRAMS_PER_POUND, lb: 1, lbs: 1, st: POUNDS_PER_SHORT_TON, lt: POUNDS_PER_LONG_TON, cwt: POUNDS_PER_HUNDREDWEIGHT,
}

/**
 * Posted weight limit. A bare number is tonnes; `st` short tons, `lt` long tons, `lbs`, `kg`.
 * A bare number above 100 is refused as unknown: no road is posted so, and kilograms or pounds are likelier.
 *
 * @param text tag value as mapped
 * @returns limit in [lb]
 * @source units of the OpenStreetMap wiki page on maxweight (from memory); short ton 2,000 lb, long ton 2,240 lb by definition
 */
export const weightLimitFromTag = (text: string | undefined): PostedLimit =>
  strictest(text, (part) => {
    if (['none', 'no', 'unlimited'].includes(part)) return none
    const [, number, unit] = /^([\d.,]+)\s*([a-z]*)\.?$/.exec(part.replace(/^(\d{1,3}),(\d{3})(?=\s*(lbs?|kg))/, '$1$2')) ?? []
    const perUnit = poundsPerUnit[unit ?? '?']
    if (number === undefined || perUnit === undefined) return unknown
    const value = decimal(number)
    if (perUnit > POUNDS_PER_SHORT_TON - 1 && value > 100) return unknown
    return limit(value * perUnit)
  })

/**
 * Posted height, width or length. A bare number is metres; feet and inches are written `12'6"`.
 * A bare number above 30 is refused as unknown: centimetres or feet are likelier.
 *
 * @param text tag value as mapped
 * @returns limit in [ft]
 * @source units of the OpenStreetMap wiki page on map features' units (from memory)
 */
export const lengthLimitFromTag = (text: string | undefined): PostedLimit =>
  strictest(text, (part) => {
    // `default`, `below_default`, `no_sign` and their kin say that nothing is posted, not how high the way is.
    if (part === 'none' || part === 'unlimited') return none
    const imperial = /^(\d{1,3})\s*(?:'|′|’|ft|feet)\s*(?:(\d{1,2}(?:\.\d+)?)\s*(?:"|″|”|''|in|inch|inches)?)?$/.exec(part)
    if (imperial) {
      const inches = Number(imperial[2] ?? 0)
      return inches < 12 ? limit(Number(imperial[1]) + inches / 12) : unknown
    }
    const [, number, unit] = /^([\d.,]+)\s*(m|metres?|meters?|cm|ft|feet|in|")?$/.exec(part) ?? []
    if (number === undefined) return unknown
    const value = decimal(number)
    if (unit === 'cm') return limit(feetFromMetres(value / 100))
    if (unit === 'ft' || unit === 'feet') return limit(value)
    if (unit === 'in' || unit === '"') return limit(value / 12)
    return value > 30 ? unknown : limit(feetFromMetres(value))
  })

const mphFromKmh = (kmh: number): number => (kmh * 1000) / METRES_PER_MILE
const KNOT_MPH = (1852 / METRES_PER_MILE)

/** Speeds behind words; `walk` is walking pace. Common practice, no source. */
const speedWords: Readonly<Record<string, PostedLimit>> = { none: { state: 'none' }, no: { state: 'none' }, walk: { state: 'limit', value: 4 } }

/**
 * General limits by zone that hold nearly everywhere outside the few countries named.
 * @source national traffic codes as listed on the OpenStreetMap wiki (from memory)
 */
const zoneSpeeds: readonly (readonly [RegExp, PostedLimit])[] = [
  [/^gb:nsl_single$/, { state: 'limit', value: 60 }],
  [/^gb:(nsl_dual|motorway)$/, { state: 'limit', value: 70 }],
  [/^(gb|uk):(nsl_restricted|urban)$/, { state: 'limit', value: 30 }],
  [/^de:motorway$/, { state: 'none' }],
  [/^de:rural$/, { state: 'limit', value: mphFromKmh(100) }],
  [/^(us|ca|mx|au|nz):/, { state: 'unknown' }],
  [/(:urban|:town|:city)$/, { state: 'limit', value: mphFromKmh(50) }],
  [/:(rural|countryside)$/, { state: 'limit', value: mphFromKmh(80) }],
  [/:(motorway|trunk)$/, { state: 'limit', value: mphFromKmh(110) }],
  [/:(living_street|walk)$/, { state: 'limit', value: 4 }],
  [/:bicycle_road$/, { state: 'limit', value: mphFromKmh(30) }],
]

/**
 * Posted speed. A bare number is kilometres an hour.
 *
 * @param text tag value as mapped: `50`, `30 mph`, `none`, `walk`, `DE:urban`, `DE:zone:30`
 * @returns limit in [mph]
 */
export const speedLimitFromTag = (text: string | undefined): PostedLimit =>
  strictest(text, (part) => {
    const word = speedWords[part]
    if (word) return word
    const zone = /^[a-z]{2}:(?:zone:?)?(\d{2,3})$/.exec(part) ?? /^zone:?(\d{2,3})$/.exec(part)
    if (zone) return limit(mphFromKmh(Number(zone[1])))
    const named = zoneSpeeds.find(([pattern]) => pattern.test(part))
    if (named) return named[1]
    const [, number, unit] = /^([\d.,]+)\s*(mph|km\/h|kmh|kph|knots)?$/.exec(part) ?? []
    if (number === undefined) return unknown
    const value = decimal(number)
    const speed_mph = unit === 'mph' ? value : unit === 'knots' ? value * KNOT_MPH : mphFromKmh(value)
    return speed_mph > 100 ? unknown : limit(speed_mph)
  })
