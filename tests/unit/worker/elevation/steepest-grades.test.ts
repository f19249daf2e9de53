import { expect, test } from 'vitest'
import { steepestOf } from '@/app/_worker/ground/steepest-grades'
import { heightGrid, profileAlong } from '@/lib/terrain'

/** Ground that rises to the north by one part in ten: 0.001° of latitude are 111.2 m, so 11.12 m a row of it. Invented. */
const bounds = { south: 45, west: 7, north: 45.02, east: 7.02 }
const rows = 21
const grid = heightGrid({
  bounds, rowCount: rows, columnCount: rows, base_m: 0, verticalDoubt_ft: 10, doubtBasis: 'stated',
  samples: Int16Array.from({ length: rows * rows }, (_, i) => Math.round((rows - 1 - Math.floor(i / rows)) * 11.12 * 10)),
})

test('a road up an even slope of a tenth, and the same road down, with the doubt of both heights over the stretch', () => {
  const south = { lat: 45.002, lon: 7.01 }, north = { lat: 45.018, lon: 7.01 }
  expect(profileAlong(grid, [south, north], 50).length).toBeGreaterThan(50)
  const { up, down, over_ft } = steepestOf(grid, [south, north])
  expect(up!.gradeShare).toBeCloseTo(0.1, 2)
  expect(down).toBeUndefined()
  expect(over_ft).toBeGreaterThan(900)
  // √(10² + 10²) ft over the stretch, and what the slope between samples adds to each height.
  expect(up!.doubtShare).toBeGreaterThanOrEqual(Math.hypot(10, 10) / (up!.to_ft - up!.from_ft))
  expect(up!.doubtShare).toBeLessThan((3 * Math.hypot(10, 10)) / (up!.to_ft - up!.from_ft))
  expect(steepestOf(grid, [north, south]).down!.gradeShare).toBeCloseTo(-0.1, 2)
})
