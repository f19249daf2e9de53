import { expect, test } from 'vitest'
import { curveFlow_gpm, findPressureForFlow_psi, pumpCurve } from '@/lib/hydraulics'

const rated = pumpCurve(1000)

test('below 150 psi a pump gives its rating and no more', () => {
  expect([0, 80, 150].map((psi) => curveFlow_gpm(rated, psi))).toEqual([1000, 1000, 1000])
})

test('110 % is given from 120 psi down only when asked for, and is marked assumed', () => {
  const over = pumpCurve(1000, [], true)
  expect(curveFlow_gpm(over, 100)).toBeCloseTo(1100, 9)
  expect(curveFlow_gpm(over, 150)).toBeCloseTo(1000, 9)
  expect(over.issues.map(({ code }) => code)).toEqual(['over-rating-assumed'])
  expect(rated.issues).toEqual([])
})

test('between the rating points the curve promises no more than a straight line', () => {
  expect(curveFlow_gpm(rated, 175)).toBeLessThanOrEqual(850)
  expect(curveFlow_gpm(rated, 175)).toBeGreaterThan(800)
  expect(curveFlow_gpm(rated, 225)).toBeLessThanOrEqual(600)
})

test('above the last point nobody has shown any flow', () => {
  expect(curveFlow_gpm(rated, 250)).toBeCloseTo(500, 9)
  expect(curveFlow_gpm(rated, 251)).toBe(0)
})

test('own points replace the rating, and scale it above them', () => {
  const own = pumpCurve(1000, [{ netPressure_psi: 150, flow_gpm: 900 }])
  expect([150, 200, 250].map((psi) => curveFlow_gpm(own, psi))).toEqual([900, 630, 450].map((flow) => expect.closeTo(flow, 9)))
})

test('own points better than the rating do not raise it where they were not tested', () => {
  const own = pumpCurve(1000, [{ netPressure_psi: 150, flow_gpm: 1200 }])
  expect(curveFlow_gpm(own, 200)).toBeCloseTo(700, 9)
})

test('a flow shown at a higher pressure counts at lower ones, and is said', () => {
  const own = pumpCurve(1000, [{ netPressure_psi: 100, flow_gpm: 800 }, { netPressure_psi: 150, flow_gpm: 950 }])
  expect(curveFlow_gpm(own, 100)).toBeCloseTo(950, 9)
  expect(own.issues.map(({ code }) => code)).toEqual(['curve-points-rise'])
})

test('of two points at one pressure the larger flow counts', () => {
  const own = pumpCurve(1000, [{ netPressure_psi: 150, flow_gpm: 900 }, { netPressure_psi: 150, flow_gpm: 1000 }])
  expect(curveFlow_gpm(own, 150)).toBeCloseTo(1000, 9)
})

test('highest pressure for a flow is found from the curve', () => {
  expect(findPressureForFlow_psi(rated, 700)).toBeCloseTo(200, 6)
  expect(findPressureForFlow_psi(rated, 400)).toBe(250)
  expect(findPressureForFlow_psi(rated, 1001)).toBeUndefined()
})

test('a negative flow or pressure throws', () => {
  expect(() => pumpCurve(1000, [{ netPressure_psi: -1, flow_gpm: 1 }])).toThrow(RangeError)
  expect(() => pumpCurve(-1)).toThrow(RangeError)
})
