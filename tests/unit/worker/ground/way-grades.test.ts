import { expect, test } from 'vitest'
import { wayGrades } from '@/app/_worker/ground/way-grades'
import { METRES_PER_DEGREE } from '@/lib/terrain'
import { gridOf } from '../../terrain/grids'

const SIZE = 61
const step_m = (0.01 / (SIZE - 1)) * METRES_PER_DEGREE
/** Level in the south and the north, with a slope of one in eight northwards between. */
const slope = gridOf(Array.from({ length: SIZE }, (_, row) => Array.from({ length: SIZE }, () => 100 + 0.125 * step_m * Math.min(30, Math.max(0, 45 - row)))), 1)
const [south, north] = [{ lat: 43.0005, lon: -71.995 }, { lat: 43.0095, lon: -71.995 }]

test('a way up a slope of one in eight is that steep up and nowhere down, and the other way about', () => {
  const up = wayGrades(slope, [south, north])
  expect(up.up?.gradeShare).toBeCloseTo(0.125, 2)
  expect(up.down).toBeUndefined()
  const down = wayGrades(slope, [north, south])
  expect(down.down?.gradeShare).toBeCloseTo(-0.125, 2)
  expect(down.up).toBeUndefined()
})

test('a stretch is 300 ft or three samples long, and its grade as doubtful as both its heights over that', () => {
  const { up } = wayGrades(slope, [south, north])
  expect(up!.to_ft - up!.from_ft).toBeGreaterThanOrEqual(300)
  expect(up!.doubtShare).toBeGreaterThanOrEqual(Math.SQRT2 / (up!.to_ft - up!.from_ft) - 1e-9)
})

test('a way along the slope, a short one and one outside the data have no grade', () => {
  expect(wayGrades(slope, [{ lat: 43.005, lon: -71.999 }, { lat: 43.005, lon: -71.991 }])).toEqual({ up: undefined, down: undefined })
  expect(wayGrades(slope, [south, { lat: 43.0008, lon: -71.995 }])).toEqual({ up: undefined, down: undefined })
  expect(wayGrades(slope, [{ lat: 44, lon: -71 }, { lat: 44.01, lon: -71 }])).toEqual({ up: undefined, down: undefined })
})
