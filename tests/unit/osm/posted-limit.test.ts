import { expect, test } from 'vitest'
import { lengthLimitFromTag, speedLimitFromTag, weightLimitFromTag, type PostedLimit } from '@/lib/osm'

const valueOf = (limit: PostedLimit): number | string => (limit.state === 'limit' ? limit.value : limit.state)

/** Pounds a metric tonne, from the exact pound. */
const TONNE_LB = 1000 / 0.45359237

test.each([
  ['3.5', 3.5 * TONNE_LB], ['3.5 t', 3.5 * TONNE_LB], ['7,5', 7.5 * TONNE_LB], ['3.5t', 3.5 * TONNE_LB], ['30', 30 * TONNE_LB],
  ['7500 kg', 7.5 * TONNE_LB], ['10 st', 20_000], ['10 lt', 22_400], ['80000 lbs', 80_000], ['80,000 lbs', 80_000], ['26000lb', 26_000], ['180 cwt', 20_160],
  ['10 tons', 20_000], ['7.5;3.5', 3.5 * TONNE_LB],
])('a weight posted as %s is %s lb', (text, expected) => {
  expect(valueOf(weightLimitFromTag(text))).toBeCloseTo(expected, 6)
})

test.each([['none', 'none'], ['default', 'unknown'], ['unsigned', 'unknown'], ['', 'unknown'], ['-5', 'unknown'], ['0', 'unknown'], ['7500', 'unknown'], ['3.5 bananas', 'unknown'], [undefined, 'unknown'], ['none;unknown', 'unknown'], ['1e3', 'unknown']])(
  'a weight posted as %s is %s: unknown is not none', (text, expected) => {
    expect(valueOf(weightLimitFromTag(text))).toBe(expected)
  },
)

test.each([
  ['4.4', 4.4 / 0.3048], ['4.4 m', 4.4 / 0.3048], ['4,4', 4.4 / 0.3048], ["12'6\"", 12.5], ["12'", 12], ["13' 6\"", 13.5], ['11 ft', 11], ['11 ft 3 in', 11.25],
  ['380 cm', 3.8 / 0.3048], ['12′6″', 12.5],
])('a height posted as %s is %s ft', (text, expected) => {
  expect(valueOf(lengthLimitFromTag(text))).toBeCloseTo(expected, 9)
})

test.each([['default', 'unknown'], ['below_default', 'unknown'], ['no_sign', 'unknown'], ['none', 'none'], ['440', 'unknown'], ["12'14\"", 'unknown'], ['abc', 'unknown'], ['', 'unknown']])(
  'a height posted as %s is %s', (text, expected) => {
    expect(valueOf(lengthLimitFromTag(text))).toBe(expected)
  },
)

test.each([
  ['50', 50 / 1.609344], ['30 mph', 30], ['30mph', 30], ['50 km/h', 50 / 1.609344], ['walk', 4], ['DE:urban', 50 / 1.609344], ['DE:rural', 100 / 1.609344],
  ['DE:zone:30', 30 / 1.609344], ['DE:zone30', 30 / 1.609344], ['zone:30', 30 / 1.609344], ['GB:nsl_single', 60], ['GB:urban', 30], ['10 knots', 11.5077945],
])('a speed posted as %s is %s mph', (text, expected) => {
  expect(valueOf(speedLimitFromTag(text))).toBeCloseTo(expected, 6)
})

test.each([['none', 'none'], ['signals', 'unknown'], ['variable', 'unknown'], ['US:urban', 'unknown'], ['999', 'unknown'], ['', 'unknown'], ['0', 'unknown']])(
  'a speed posted as %s is %s', (text, expected) => {
    expect(valueOf(speedLimitFromTag(text))).toBe(expected)
  },
)
