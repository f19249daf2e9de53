import { describe, expect, it } from 'vitest'
import { findDecimal, readCell } from '@/lib/exchange/read-cell'
import { readDegrees, readPair } from '@/lib/exchange/read-degrees'
import { findField, fieldsOf } from '@/lib/exchange/list-fields'
import { guarded, unguarded } from '@/lib/exchange/spreadsheet-guard'
import { isoSeconds } from '@/lib/exchange/iso-seconds'
import { planLists, districtLists } from '@/lib/exchange'

const spec = (list: 'sources' | 'hazards' | 'draftSites', path: string) => {
  const found = findField(list, path)
  if (!found) throw new RangeError(`path is ${path}, must be a field of ${list}`)
  return found
}
const cell = (text: string, path: string, unit?: string, list: 'sources' | 'hazards' | 'draftSites' = 'sources', decimal: '.' | ',' = '.') => {
  const made = readCell(text, spec(list, path), { ...(unit !== undefined && { unit }), decimal })
  return 'code' in made ? made.code : made.value
}

describe('a coordinate', () => {
  // 44° 3′ 4.32″ is 44 + 3/60 + 4.32/3600 = 44.0512 by arithmetic.
  it.each([['44.0512', 44.0512], ['+44.0512', 44.0512], ['44,0512', 44.0512], ['N44.0512', 44.0512], ['44.0512 N', 44.0512], ['44°03\'04.32"N', 44.0512], ['44 03 04.32', 44.0512], ['44° 3.072′', 44.0512], ['S 44 3.072', -44.0512], ['−44.0512', -44.0512]])('%s', (text, degrees) => {
    expect(readDegrees(text, 'lat', text.includes(',') ? ',' : '.')).toEqual({ degrees: expect.closeTo(degrees, 9) as unknown })
  })
  it.each([['north', 'not-a-coordinate'], ['44 61 0', 'not-a-coordinate'], ['44.5 30', 'not-a-coordinate'], ['44 E', 'other-axis'], ['91', 'range'], ['4880210.7', 'projected'], ['-44 S', 'not-a-coordinate']])('%s is refused', (text, wrong) => {
    expect(readDegrees(text, 'lat', '.')).toEqual({ wrong })
  })
  it.each([['44.0512, -73.2041', 44.0512, -73.2041], ['44.0512 -73.2041', 44.0512, -73.2041], ['44°03\'04.32"N 73°12\'14.76"W', 44.0512, -73.2041], ['W73.2041 N44.0512', 44.0512, -73.2041]])('both in one: %s', (text, lat, lon) => {
    expect(readPair(text, '.')).toEqual({ lat: expect.closeTo(lat, 9) as unknown, lon: expect.closeTo(lon, 9) as unknown })
  })
})

describe('a cell', () => {
  it('is read in the unit of its column, or in its own', () => {
    expect(cell('3', 'deepest_ft', 'm')).toBeCloseTo(9.842519685, 9)
    expect(cell('3 ft', 'deepest_ft', 'm')).toBe(3)
    expect(cell('1,500 L', 'usable_gal', 'gal')).toBeCloseTo(1500 / 3.785411784, 9)
    expect(cell('1000', 'test_gpm', 'l/min')).toBeCloseTo(264.1720524, 6)
    expect(cell('5', 'water_degF', '°c')).toBe(41)
  })
  it('is refused where it says nothing certain', () => {
    expect(cell('about 3', 'deepest_ft')).toBe('exchange-not-a-number')
    expect(cell('3,5', 'deepest_ft')).toBe('exchange-not-a-number')
    expect(cell('3 gal', 'deepest_ft')).toBe('exchange-unit-unknown')
    expect(cell('-1', 'usable_gal')).toBe('exchange-out-of-range')
    expect(cell('2.5', 'storeyCount', undefined, 'hazards')).toBe('exchange-not-whole')
    expect(cell('perhaps', 'isDwelling', undefined, 'hazards')).toBe('exchange-not-yes-no')
    expect(cell('2025-02-29', 'testedOn')).toBe('exchange-not-a-day')
    expect(cell('3/4/2025', 'testedOn', 'year-month-day')).toBe('exchange-not-a-day')
  })
  it('takes days in the order said, and choices by the words in use', () => {
    expect(cell('3/4/2025', 'testedOn', 'month/day/year')).toBe('2025-03-04')
    expect(cell('3/4/2025', 'testedOn', 'day/month/year')).toBe('2025-04-03')
    expect(cell('2024-02-29T10:00:00', 'testedOn')).toBe('2024-02-29')
    expect(cell('DRY HYDRANT', 'kind')).toBe('dryHydrant')
    expect(cell('Type V', 'constructionType', undefined, 'hazards')).toBe('V')
  })
  it('names the choices there are in the words of a table', () => {
    const choicesOf = (path: string, list: 'sources' | 'hazards') => {
      const made = readCell('swamp', spec(list, path), { decimal: '.' })
      return 'code' in made ? made.values.choices : undefined
    }
    expect(choicesOf('kind', 'sources')).toContain('dry hydrant')
    expect(choicesOf('constructionType', 'hazards')).toContain('IV')
  })
  it('tells thousands from decimals by the sign in use', () => {
    expect(findDecimal('1,234.5', '.')).toBe(1234.5)
    expect(findDecimal('1.234,5', ',')).toBe(1234.5)
    expect(findDecimal('1 234', '.')).toBe(1234)
    expect(findDecimal('1.234,5', '.')).toBeUndefined()
  })
})

it('a formula is guarded on the way out and bare again on the way in', () => {
  for (const text of ['=SUM(A1)', '+1', '-1', '@x', "'=x", "''", "'quoted'", 'plain']) expect(unguarded(guarded(text))).toBe(text)
  expect(guarded('=HYPERLINK("x")')).toBe('\'=HYPERLINK("x")')
})

it('a moment is seconds from 1970, whatever its zone', () => {
  // 951,782,400 s is 2000-02-29T00:00:00Z, by the leap rule of ISO 8601's calendar: 30 years of 365 days, 7 leap days, 59 days.
  expect(isoSeconds('2000-02-29T00:00:00Z')).toBe((30 * 365 + 7 + 59) * 86_400)
  expect(isoSeconds('2000-02-29T02:00:00+02:00')).toBe((30 * 365 + 7 + 59) * 86_400)
  expect(isoSeconds('yesterday')).toBeUndefined()
})

it('every list has fields, each with its unit where its name has one', () => {
  for (const list of [...districtLists, ...planLists]) {
    const fields = fieldsOf(list)
    expect(fields.length, list).toBeGreaterThan(2)
    expect(fields.filter(({ path, unit, type }) => (type === 'number' || type === 'whole') && path.includes('_') && !unit).map(({ path }) => path), list).toEqual([])
  }
})
