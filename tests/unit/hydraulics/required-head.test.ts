import { expect, test } from 'vitest'
import { calibrateRequiredHead, draftCapacity, findWidestRatedSuction, ratedSuction, requiredHead_ft, standardDryVacuum_inHg, type DraftTestPoint } from '@/lib/hydraulics'

const codes = (calibrated: ReturnType<typeof calibrateRequiredHead>) => calibrated.issues.map(({ code }) => code)
const point = (lift_ft: number, flow_gpm: number): DraftTestPoint => ({ lift_ft, flow_gpm, altitude_ft: 1000, water_degF: 60 })

test('the default leaves 25.3 ft of lift without flow at 1,000 ft', () => {
  const { a_ft, b_ft, basis } = calibrateRequiredHead({ rated_gpm: 1000 })
  // 32.72 ft of air less 0.59 ft of vapor less 25.3 ft.
  expect(a_ft).toBeCloseTo(6.83, 2)
  // 32.13 − 10 − 8.4 − 6.83.
  expect(b_ft).toBeCloseTo(6.9, 2)
  expect(basis).toBe('rating')
})

test('head needed at the rated flow is a and b together', () => {
  const calibrated = calibrateRequiredHead({ rated_gpm: 1000 })
  expect(requiredHead_ft(calibrated, 1000)).toBeCloseTo(calibrated.a_ft + calibrated.b_ft, 9)
  expect(requiredHead_ft(calibrated, 0)).toBe(calibrated.a_ft)
})

test('a dry vacuum test sets the lift without flow', () => {
  const { a_ft, basis, issues } = calibrateRequiredHead({ rated_gpm: 1000, dryVacuum_inHg: 24 })
  // At sea level 33.93 − 0.59 − 24 × 1.1339.
  expect(a_ft).toBeCloseTo(33.93 - 0.59 - 27.21, 1)
  expect([basis, issues]).toEqual(['dry-vacuum', []])
})

test('a dry vacuum under the standard, or more than there is air, is said', () => {
  expect(codes(calibrateRequiredHead({ rated_gpm: 1000, dryVacuum_inHg: 20 }))).toEqual(['dry-vacuum-below-standard'])
  expect(codes(calibrateRequiredHead({ rated_gpm: 1000, dryVacuum_inHg: 29.9 }))).toEqual(['dry-vacuum-impossible'])
})

test('the standard asks 22 inHg to 2,000 ft, one less each 1,000 ft above', () => {
  // NFPA 1901/1911, from memory.
  expect([0, 2000, 3000, 5000].map(standardDryVacuum_inHg)).toEqual([22, 22, 21, 19])
})

test('one test point sets b and comes back exactly', () => {
  const pumper = { rated_gpm: 1000, testPoints: [point(12, 880)] }
  const calibrated = calibrateRequiredHead(pumper)
  expect(calibrated.basis).toBe('test-points')
  expect(calibrated.residualShares[0]).toBeCloseTo(0, 9)
  const back = draftCapacity({ pumper, suction: ratedSuction(1000).suction, place: point(12, 0), ask: { netPressure_psi: 0 } })
  expect(back.suctionSide_gpm).toBeCloseTo(880, 6)
})

test('a pump better than any b allows lowers a instead', () => {
  const calibrated = calibrateRequiredHead({ rated_gpm: 1000, testPoints: [point(20, 800)] })
  expect(calibrated.b_ft).toBe(0)
  expect(calibrated.residualShares[0]).toBeCloseTo(0, 6)
})

test('two points far apart set both, and both come back', () => {
  const calibrated = calibrateRequiredHead({ rated_gpm: 1250, testPoints: [point(6, 1300), point(18, 800)] })
  for (const share of calibrated.residualShares) expect(Math.abs(share ?? 1)).toBeLessThan(1e-6)
})

test('points that cannot all be true are said to disagree, with how far', () => {
  const calibrated = calibrateRequiredHead({ rated_gpm: 1000, testPoints: [point(6, 900), point(12, 1000), point(18, 600)] })
  expect(codes(calibrated)).toEqual(['test-points-disagree'])
  expect(Number(calibrated.issues[0]?.values.worstShare)).toBeGreaterThan(0.02)
})

test('a point beyond what the air could push is left out and said', () => {
  const calibrated = calibrateRequiredHead({ rated_gpm: 1000, testPoints: [point(20, 1400)] })
  expect(codes(calibrated)).toEqual(['test-point-impossible'])
  expect(calibrated.residualShares).toEqual([undefined])
  expect(calibrated.basis).toBe('rating')
})

test('a rating through hose too small for it is said', () => {
  expect(codes(calibrateRequiredHead({ rated_gpm: 1250, ratedSuction: { size_in: 4, length_ft: 20, lineCount: 1 } }))).toEqual(['rated-suction-impossible'])
})

test('rated hose and lift follow the rows of the tables', () => {
  // Classical table's 10 ft row; larger sizes from the pump-rating clause table, both from memory.
  const row = (rated_gpm: number) => {
    const { lift_ft, suction } = ratedSuction(rated_gpm)
    return [suction.size_in, suction.lineCount, lift_ft]
  }
  expect([250, 500, 750, 1000, 1250, 1500].map(row)).toEqual([[3, 1, 10], [4, 1, 10], [4.5, 1, 10], [5, 1, 10], [6, 1, 10], [6, 1, 10]])
  expect([1750, 2000, 2250, 3000].map(row)).toEqual([[6, 2, 8], [6, 2, 6], [6, 3, 6], [6, 4, 6]])
  expect(row(900)).toEqual(row(1000))
})

test('the widest rated suction is named only where it is wider', () => {
  expect([500, 750, 1250, 2000].map(findWidestRatedSuction)).toEqual([undefined, undefined, undefined, undefined])
  expect(findWidestRatedSuction(1000)?.suction.size_in).toBe(6)
  expect(findWidestRatedSuction(1500)?.suction.lineCount).toBe(2)
})
