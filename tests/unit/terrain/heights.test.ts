import { expect, test } from 'vitest'
import { findHeight, findSteepest, fillGaps, gradesAlong, groundLength_ft, heightGrid, profileAlong } from '@/lib/terrain'
import { distanceM } from '@/lib/geo'
import { feetFromMetres } from '@/lib/units'
import { gridOf } from './grids'

const middle = { lat: 43.005, lon: -71.995 }

test('a height between four samples is their mean in the middle', () => {
  const grid = gridOf([[100, 200], [300, 400]])
  expect(findHeight(grid, middle)?.height_ft).toBeCloseTo(feetFromMetres(250), 6)
})

test('a height at a sample is that sample', () => {
  const grid = gridOf([[100, 200], [300, 400]])
  expect(findHeight(grid, { lat: 43.01, lon: -72 })?.height_ft).toBeCloseTo(feetFromMetres(100), 6)
  expect(findHeight(grid, { lat: 43, lon: -71.99 })?.height_ft).toBeCloseTo(feetFromMetres(400), 6)
})

test('a plane is read without error anywhere', () => {
  const plane = (row: number, column: number) => 150 + 7 * row - 3 * column
  const grid = gridOf(Array.from({ length: 9 }, (_, row) => Array.from({ length: 9 }, (_, column) => plane(row, column))))
  for (const [y, x] of [[0.3, 4.9], [7.99, 0.01], [3.5, 3.25], [8, 8]] as const) {
    const found = findHeight(grid, { lat: 43.01 - (y * 0.01) / 8, lon: -72 + (x * 0.01) / 8 })
    expect(found?.height_ft).toBeCloseTo(feetFromMetres(plane(y, x)), 5)
  }
})

test('outside the grid, and beside a gap that counts, there is no height', () => {
  const grid = gridOf([[100, undefined, 100], [100, 100, 100]])
  expect(findHeight(grid, { lat: 42.9, lon: -71.995 })).toBeUndefined()
  expect(findHeight(grid, { lat: 43.009, lon: -71.996 })).toBeUndefined()
  expect(findHeight(grid, { lat: 43, lon: -71.996 })?.height_ft).toBeCloseTo(feetFromMetres(100), 6)
})

test('doubt grows with the spread of the samples around', () => {
  const flat = findHeight(gridOf([[100, 100], [100, 100]], 10), middle)
  const steep = findHeight(gridOf([[100, 100], [140, 140]], 10), middle)
  expect(flat?.doubt_ft).toBeCloseTo(10, 9)
  expect(steep?.doubt_ft).toBeCloseTo(Math.hypot(10, feetFromMetres(20)), 6)
})

test('a profile has every corner, rises in distance and keeps its step', () => {
  const grid = gridOf([[100, 200], [100, 200]])
  const path = [{ lat: 43.005, lon: -72 }, { lat: 43.005, lon: -71.995 }, { lat: 43.005, lon: -71.995 }, { lat: 43.009, lon: -71.995 }]
  const profile = profileAlong(grid, path, 100)
  const whole_ft = feetFromMetres(distanceM(path[0]!, path[1]!) + distanceM(path[1]!, path[3]!))
  expect(profile[0]?.distance_ft).toBe(0)
  expect(profile.at(-1)?.distance_ft).toBeCloseTo(whole_ft, 6)
  for (let i = 1; i < profile.length; i++) {
    const gap_ft = profile[i]!.distance_ft - profile[i - 1]!.distance_ft
    expect(gap_ft).toBeGreaterThan(0)
    expect(gap_ft).toBeLessThanOrEqual(100.0001)
  }
  expect(profile.some(({ point }) => point.lat === 43.005 && point.lon === -71.995)).toBe(true)
})

test('hose over a slope of three in four is a quarter longer than the map says', () => {
  const profile = [{ distance_ft: 0, point: middle, height_ft: 0 }, { distance_ft: 400, point: middle, height_ft: 300 }]
  expect(groundLength_ft(profile)).toBeCloseTo(500, 9)
})

test('gaps are bridged by straight lines and their length is told', () => {
  const at = (distance_ft: number, height_ft?: number) => ({ distance_ft, point: middle, height_ft })
  const { points, issues } = fillGaps([at(0), at(100, 10), at(200), at(300), at(400, 40), at(500)])
  expect(points.map(({ height_ft }) => height_ft)).toEqual([10, 10, 20, 30, 40, 40])
  expect(issues).toEqual([{ code: 'terrain-gaps', severity: 'warn', subjectIds: [], values: { guessed_ft: 500 } }])
  expect(fillGaps([at(0), at(10)]).issues[0]?.code).toBe('terrain-none')
  expect(fillGaps([at(0, 1), at(10, 2)]).issues).toEqual([])
})

test('grade is rise over level distance, downhill negative', () => {
  const at = (distance_ft: number, height_ft: number) => ({ distance_ft, point: middle, height_ft, doubt_ft: 3 })
  const grades = gradesAlong([at(0, 0), at(100, 10), at(200, 8), at(300, -7)], 100)
  expect(grades.map(({ gradeShare }) => gradeShare)).toEqual([0.1, -0.02, -0.15])
  expect(grades[0]?.doubtShare).toBeCloseTo(Math.hypot(3, 3) / 100, 12)
  expect(findSteepest(grades)).toEqual({ up: grades[0], down: grades[2] })
})

test('a grid whose parts do not fit together is a broken contract', () => {
  const good = gridOf([[100, 100], [100, 100]])
  expect(() => heightGrid({ ...good, rowCount: 3 })).toThrow(RangeError)
  expect(() => heightGrid({ ...good, bounds: { ...good.bounds, north: 42 } })).toThrow(RangeError)
  expect(() => heightGrid({ ...good, verticalDoubt_ft: -1 })).toThrow(RangeError)
  expect(() => profileAlong(good, [middle], 0)).toThrow(RangeError)
})
