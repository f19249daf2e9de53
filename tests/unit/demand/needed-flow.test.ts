import fc from 'fast-check'
import { expect, test } from 'vitest'
import { instituteFlow_gpm, IITRI_OTHER_MOST_SQFT, neededFlow, ruralDelivery_gpm, ratingFlow_gpm, type Building, type DemandMethod, type NeededFlow } from '@/lib/demand'

/** The standard's worked dwelling. */
const dwelling: Building = {
  length_ft: 50, width_ft: 24, storeyHeights_ft: [8, 8], ridge_ft: 8, occupancyClass: 7, construction: 'V', isDwelling: true, exposureCount: 0,
}
const barn: Building = { length_ft: 100, width_ft: 60, storeyHeights_ft: [16], ridge_ft: 12, occupancyClass: 4, construction: 'V', isDwelling: false, exposureCount: 1 }

function method(result: NeededFlow, name: DemandMethod) {
  const found = result.methods.find((one) => one.method === name)
  if (!found) throw new Error(`no ${name}`)
  return found
}
const codes = (issues: NeededFlow['issues']) => issues.map(({ code }) => code)

test('every method stands beside the others', () => {
  expect(neededFlow(dwelling).methods.map((one) => one.method)).toEqual(['rural-standard', 'academy', 'iowa', 'institute', 'rating-schedule'])
})

test('the rural standard is chosen where the quick rule is outside its range', () => {
  const result = neededFlow(dwelling)
  expect(method(result, 'academy').isValid).toBe(false)
  expect([result.chosen, result.flow_gpm]).toEqual(['rural-standard', 500])
})

test('the quick rule is chosen where it asks for more within its range', () => {
  const result = neededFlow({ ...dwelling, length_ft: 80, storeyHeights_ft: [8, 8], involvedShare: 0.5 })
  // 80 × 24 / 3 · 2 floors · 0.5.
  expect([result.chosen, result.flow_gpm]).toEqual(['academy', 640])
})

test('a person may pick any method, and is warned when it is outside its range', () => {
  const result = neededFlow(dwelling, { method: 'academy' })
  expect(result.flow_gpm).toBe(800)
  expect(codes(result.issues)).toContain('chosen-method-outside-range')
})

test('supply is the flow for its duration, or the standard’s volume where that is more', () => {
  expect(neededFlow(dwelling).supply_gal).toBe(60_000)
  expect(neededFlow(barn, { duration_s: 60 }).supply_gal).toBe(method(neededFlow(barn), 'rural-standard').supply_gal)
})

test('sources in conflict on a frame dwelling are both shown, and either can be taken', () => {
  const capped = method(neededFlow(dwelling), 'rural-standard'), full = method(neededFlow(dwelling, { dwellingRule: 'full' }), 'rural-standard')
  expect([capped.supply_gal, full.supply_gal]).toEqual([expect.closeTo(3428.6, 1), expect.closeTo(5142.9, 1)])
  expect(capped.issues.find(({ code }) => code === 'dwelling-factor-conflict')?.values).toMatchObject({ capped_gpm: 500, full_gpm: 500 })
  expect(codes(method(neededFlow(barn), 'rural-standard').issues)).toEqual([])
})

test('dwellings take the spacing table, and an unknown spacing asks for the most', () => {
  expect(method(neededFlow(dwelling), 'rating-schedule')).toMatchObject({ flow_gpm: 1500, isValid: false })
  const near = method(neededFlow({ ...dwelling, spacing_ft: 50 }), 'rating-schedule')
  expect(near).toMatchObject({ flow_gpm: 750, isValid: true, duration_s: 7200 })
  expect(codes(near.issues)).toEqual(['dwelling-table-conflict'])
  expect(method(neededFlow({ ...dwelling, spacing_ft: 50 }, { dwellingTable: 'newer' }), 'rating-schedule').flow_gpm).toBe(500)
})

test('sprinklers are noted, not subtracted', () => {
  expect(codes(method(neededFlow({ ...barn, isSprinklered: true }), 'rural-standard').issues)).toEqual(['sprinklered-may-be-waived'])
})

test('methods more than three times apart are said to be', () => {
  expect(codes(neededFlow({ ...barn, length_ft: 300, width_ft: 200 }).issues)).toContain('methods-far-apart')
})

test('the research curve is held at its top, not followed down', () => {
  expect(instituteFlow_gpm(30_000, false)).toBe(instituteFlow_gpm(IITRI_OTHER_MOST_SQFT, false))
  expect(method(neededFlow({ ...barn, length_ft: 300, width_ft: 200 }), 'institute').isValid).toBe(false)
})

test('no method asks for less as the building grows', () => {
  const size = fc.double({ min: 20, max: 400, noNaN: true })
  fc.assert(fc.property(size, size, fc.double({ min: 0.1, max: 200, noNaN: true }), fc.boolean(), (length_ft, width_ft, by, isDwelling) => {
    const small = neededFlow({ ...barn, isDwelling, length_ft, width_ft }), large = neededFlow({ ...barn, isDwelling, length_ft: length_ft + by, width_ft })
    small.methods.forEach((one, i) => expect(large.methods[i]?.flow_gpm).toBeGreaterThanOrEqual(one.flow_gpm - 1e-9))
  }))
})

test('an exposure never lowers what is needed', () => {
  for (const one of [dwelling, barn]) {
    const without = neededFlow({ ...one, exposureCount: 0 }), with_ = neededFlow({ ...one, exposureCount: 1 })
    expect(with_.flow_gpm).toBeGreaterThanOrEqual(without.flow_gpm)
    expect(with_.supply_gal).toBeGreaterThanOrEqual(without.supply_gal)
  }
})

test('the rating schedule stays within 500 and 12,000 gpm', () => {
  expect(ratingFlow_gpm(100, 'I', 'C-1')).toBe(500)
  expect(ratingFlow_gpm(1e6, 'V', 'C-5', 2)).toBe(12_000)
})

test('a building without size, storeys or class throws', () => {
  expect(() => neededFlow({ ...barn, length_ft: 0 })).toThrow('length_ft')
  expect(() => neededFlow({ ...barn, storeyHeights_ft: [] })).toThrow('storeyHeights_ft')
  expect(() => neededFlow({ ...barn, involvedShare: 0 })).toThrow('involvedShare')
  expect(() => ruralDelivery_gpm(-1)).toThrow('supply_gal')
})
