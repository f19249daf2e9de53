import { describe, expect, test } from 'vitest'
import { parseQuantity } from '@/app/_text'
import type { UnitSystem } from '@/app/_text'
import type { Unit } from '@/lib/units'

function valueOf(text: string, unit: Unit, system: UnitSystem = 'us'): number {
  const parsed = parseQuantity(text, unit, system)
  if (parsed.kind !== 'value') throw new Error(`"${text}" gave ${JSON.stringify(parsed)}`)
  return parsed.value
}

function refusal(text: string, unit: Unit, options: Parameters<typeof parseQuantity>[3] = {}, system: UnitSystem = 'us'): string {
  const parsed = parseQuantity(text, unit, system, options)
  if (parsed.kind !== 'refused') throw new Error(`"${text}" gave ${JSON.stringify(parsed)}`)
  return parsed.sentence.replaceAll('\u00a0', ' ')
}

describe('a typed quantity', () => {
  test('without unit is in the system in use', () => {
    expect(valueOf('12', 'ft')).toBe(12)
    expect(valueOf('3.048', 'ft', 'metric')).toBeCloseTo(10, 9)
    expect(valueOf('10', 'psi', 'metric-bar')).toBeCloseTo(145.038, 3)
    expect(valueOf('20', 'degF', 'metric')).toBeCloseTo(68, 9)
    expect(valueOf('20', 'inHg', 'metric-bar')).toBeCloseTo(5.906, 3)
  })

  test('with a unit is read in it, whatever the system in use', () => {
    for (const system of ['us', 'metric', 'metric-bar'] as const) {
      expect(valueOf('2.5 m', 'ft', system)).toBeCloseTo(8.2021, 4)
      expect(valueOf('500 L/min', 'gpm', system)).toBeCloseTo(132.086, 3)
      expect(valueOf('1000 gpm', 'gpm', system)).toBe(1000)
      expect(valueOf('7 bar', 'psi', system)).toBeCloseTo(101.526, 3)
      expect(valueOf('150psi', 'psi', system)).toBe(150)
      expect(valueOf('18 t', 'lb', 'metric')).toBeCloseTo(39683.2, 1)
      expect(valueOf('-5 °C', 'degF', system)).toBeCloseTo(23, 9)
      expect(valueOf('2 m3', 'gal', system)).toBeCloseTo(528.344, 3)
      expect(valueOf('1 acre', 'sqft', system)).toBe(43560)
      expect(valueOf('60 m³/h', 'gpm', system)).toBeCloseTo(264.172, 3)
    }
  })

  test('in feet and inches is understood as it is spoken and written', () => {
    for (const text of ['8 ft 6 in', `8'6"`, `8' 6`, '8′6″', '8ft6in', '8.5', '8 feet 6 inches', '8 1/2', '8½ ft', '8-1/2']) {
      expect(valueOf(text, 'ft'), text).toBeCloseTo(8.5, 12)
    }
    expect(valueOf(`8'2`, 'ft')).toBeCloseTo(8 + 2 / 12, 12)
    expect(valueOf('-8 ft 6 in'.slice(1), 'ft')).toBeCloseTo(8.5, 12)
    expect(parseQuantity('-8 ft 6 in', 'ft', 'us', { min: -100 })).toMatchObject({ kind: 'value', value: -8.5 })
  })

  test('in trade fractions is exact', () => {
    expect(valueOf('2½', 'in')).toBe(2.5)
    expect(valueOf('1 3/4 in', 'in')).toBe(1.75)
    expect(valueOf('2-1/2"', 'in')).toBe(2.5)
    expect(valueOf('3/4', 'in')).toBe(0.75)
  })

  test('may be grouped by commas or spaces', () => {
    for (const text of ['1,000', '1 000', '1000', '1\u00a0000', '1,000.0 gpm', '1 000 gpm']) expect(valueOf(text, 'gpm'), text).toBe(1000)
    expect(valueOf('1,234,567', 'gal')).toBe(1234567)
  })

  test('of time is minutes, m:ss, or says its own units', () => {
    expect(valueOf('14', 's')).toBe(840)
    expect(valueOf('1:30', 's')).toBe(90)
    expect(valueOf('90 s', 's')).toBe(90)
    expect(valueOf('1 h 20 min', 's')).toBe(4800)
    expect(valueOf('2 h 5 min 30 s', 's')).toBe(7530)
    expect(valueOf('1:02:30', 's')).toBe(3750)
    expect(valueOf('1.5 min', 's')).toBe(90)
  })

  test('keeps what was typed', () => {
    expect(parseQuantity('  2.5 m ', 'ft', 'us')).toMatchObject({ kind: 'value', entered: '2.5 m' })
  })

  test('that is empty is absent, never 0', () => {
    expect(parseQuantity('', 'ft', 'us')).toEqual({ kind: 'absent' })
    expect(parseQuantity('  \u00a0 ', 'ft', 'us')).toEqual({ kind: 'absent' })
    expect(valueOf('0', 'ft')).toBe(0)
  })
})

describe('a quantity that cannot be right', () => {
  test('is refused by field, value and range', () => {
    expect(refusal('40', 'ft', { field: 'Lift', max: 26 })).toBe('Lift: “40” is outside 0 ft to 26 ft.')
    expect(refusal('-3', 'ft', { field: 'Lift' })).toBe('Lift: “-3” is outside 0 ft to 30,000 ft.')
    expect(refusal('9999999', 'gpm', { field: 'Rating' }, 'metric')).toBe('Rating: “9999999” is outside 0 L/min to 75,708 L/min.')
  })

  test('is refused when it is no number', () => {
    for (const text of ['about 12', '12-14', '1e5', '~12', 'ft', '12 ft and a bit', '8 6', '8 ft 14 in', '1 0000', '1/0', 'NaN', 'Infinity', '--3', '1:75x']) {
      expect(parseQuantity(text, 'ft', 'us').kind, text).toBe('refused')
    }
    expect(refusal('abc', 'ft', { field: 'Lift' })).toContain('Lift: “abc” is not a figure')
  })

  test('is refused when a comma could be a decimal or a group', () => {
    expect(refusal('1,5', 'ft', { field: 'Lift' })).toContain('could be read two ways')
  })

  test('is refused in a unit of something else', () => {
    expect(refusal('12 psi', 'ft', { field: 'Lift' })).toContain('“psi” is not a unit for this')
    expect(refusal('12 gal', 'gpm', { field: 'Flow' })).toContain('gpm, L/min, L/s, m³/h')
  })

  test('is refused when a ton may be either of two', () => {
    expect(refusal('15 t', 'lb', { field: 'Bridge posting' })).toContain('short tons (2,000 lb) or tonnes (1,000 kg)')
    expect(refusal('15 tons', 'lb', { field: 'Bridge posting' }, 'metric')).toContain('short tons')
    expect(valueOf('15 tons', 'lb')).toBe(30000)
  })

  test('on the bound itself passes in either system', () => {
    expect(parseQuantity('9144 m', 'ft', 'metric')).toMatchObject({ kind: 'value' })
    expect(parseQuantity('75708.2356', 'gpm', 'metric')).toMatchObject({ kind: 'value' })
  })
})
