import { describe, expect, test } from 'vitest'
import { displayUnit, entryText, formatClock, formatMinutes, formatNumber, formatQuantity, formatShare, formatTime } from '@/app/_text'

const plain = (text: string): string => text.replaceAll('\u00a0', ' ')
const shown = (...args: Parameters<typeof formatQuantity>): string => plain(formatQuantity(...args))

describe('a quantity as shown', () => {
  test('keeps the decimals that an officer can measure, no trailing zeros', () => {
    expect(shown(1284.4, 'gpm', 'us')).toBe('1,284 gpm')
    expect(shown(2.46, 'gpm', 'us')).toBe('2.5 gpm')
    expect(shown(12.04, 'ft', 'us')).toBe('12 ft')
    expect(shown(12.46, 'ft', 'us')).toBe('12.5 ft')
    expect(shown(1.75, 'in', 'us')).toBe('1.75 in')
    expect(shown(60, 'degF', 'us')).toBe('60 °F')
    expect(shown(17.64, 'inHg', 'us')).toBe('17.6 inHg')
  })

  // Exact definitions: 1 US gal = 3.785411784 L, 1 ft = 0.3048 m, 1 in = 25.4 mm, 1 mi = 1.609344 km, 1 lb = 0.45359237 kg
  // (NIST Handbook 44, appendix C, published); 1 psi = 6.894757 kPa (NIST SP 811, table B.8, published).
  test('is turned to metric by the exact definitions', () => {
    expect(shown(1000, 'gal', 'metric')).toBe('3,785 L')
    expect(shown(1000, 'gpm', 'metric')).toBe('3,785 L/min')
    expect(shown(20, 'ft', 'metric')).toBe('6.1 m')
    expect(shown(5, 'in', 'metric')).toBe('127 mm')
    expect(shown(10, 'mi', 'metric')).toBe('16.1 km')
    expect(shown(40000, 'lb', 'metric')).toBe('18,144 kg')
    expect(shown(150, 'psi', 'metric')).toBe('1,034 kPa')
    expect(shown(150, 'psi', 'metric-bar')).toBe('10.3 bar')
    expect(shown(60, 'degF', 'metric')).toBe('15.6 °C')
    expect(shown(20, 'inHg', 'metric-bar')).toBe('68 kPa')
  })

  test('in a headline is rounded to a step, and a promise is rounded down', () => {
    expect(shown(528, 'gpm', 'us', { style: 'headline', toward: 'down' })).toBe('525 gpm')
    expect(shown(521, 'gpm', 'us', { style: 'headline', toward: 'up' })).toBe('521 gpm')
    expect(shown(98, 'gpm', 'us', { style: 'headline', toward: 'down' })).toBe('95 gpm')
    expect(shown(520, 'gpm', 'us', { style: 'headline', toward: 'down' })).toBe('520 gpm')
    expect(shown(520, 'gpm', 'metric', { style: 'headline', toward: 'down' })).toBe('1,960 L/min')
    // 1,000 and 6,000 gal are 3,785.4 and 22,712 L: three figures.
    expect([1000, 6000].map((held_gal) => shown(held_gal, 'gal', 'metric', { style: 'headline', toward: 'down' }))).toEqual(['3,780 L', '22,700 L'])
  })

  test('in a working shows one decimal more', () => {
    expect(shown(528.26, 'gpm', 'us', { style: 'working' })).toBe('528.3 gpm')
    expect(shown(14.036, 'psi', 'us', { style: 'working' })).toBe('14 psi')
    expect(shown(4.036, 'psi', 'us', { style: 'working' })).toBe('4.04 psi')
  })

  test('with a number of digits asked for shows exactly these', () => {
    expect(shown(12, 'ft', 'us', { digits: 2 })).toBe('12.00 ft')
  })

  test('that is not known says so and is never 0', () => {
    expect(shown(undefined, 'gpm', 'us')).toBe('not known')
  })

  test('that is no finite number is a broken contract', () => {
    for (const value of [NaN, Infinity, -Infinity]) {
      expect(() => formatQuantity(value, 'gpm', 'us')).toThrow(RangeError)
      expect(() => formatQuantity(value, 's', 'us')).toThrow(RangeError)
    }
  })

  test('never shows a minus before zero, and shows a true minus otherwise', () => {
    expect(shown(-0.01, 'ft', 'us')).toBe('0 ft')
    expect(shown(-4, 'ft', 'us')).toBe('−4 ft')
  })

  test('never breaks between number and unit', () => {
    expect(formatQuantity(640, 'gpm', 'us')).toBe('640\u00a0gpm')
  })
})

describe('time on screen', () => {
  test('is seconds under a minute, then m:ss, then hours', () => {
    expect([45, 90, 840, 7500, 7530, 7200].map(formatTime).map(plain)).toEqual(['45 s', '1 min 30 s', '14 min', '2 h 5 min', '2 h 5 min 30 s', '2 h'])
  })

  test('breaks over no line between a number and its unit, and may between hours and minutes', () => {
    expect(formatTime(7530)).toBe('2\u00a0h 5\u00a0min 30\u00a0s')
  })

  test('in a headline is whole minutes, late rather than early when asked', () => {
    expect(formatMinutes(841)).toBe('14\u00a0min')
    expect(plain(formatMinutes(841, 'up'))).toBe('15 min')
    expect(plain(formatMinutes(40))).toBe('40 s')
  })

  test('on a clock is m:ss from the start', () => {
    expect([0, 870, 3750].map(formatClock)).toEqual(['0:00', '14:30', '1:02:30'])
  })
})

test('shares read as percentages and numbers in groups of three', () => {
  expect(plain(formatShare(0.874))).toBe('87%')
  expect(formatNumber(1234567.891, 1)).toBe('1,234,567.9')
})

test('text of an entry field has no unit and says times as they are typed', () => {
  expect(entryText(12.5, 'ft', 'us')).toBe('12.5')
  expect(entryText(90, 's', 'us')).toBe('1:30')
  expect(entryText(840, 's', 'us')).toBe('14')
  expect(entryText(150, 'psi', 'metric-bar')).toBe('10.34')
})

test('bar is for pressures alone', () => {
  expect(displayUnit('psi', 'metric-bar').symbol).toBe('bar')
  expect(displayUnit('gpm', 'metric-bar').symbol).toBe('L/min')
})
