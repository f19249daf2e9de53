import { expect, test } from 'vitest'
import { METRES_PER_DEGREE } from '@/lib/geo'
import { hillShade } from '@/lib/terrain'
import { gridOf } from './grids'

const SIZE = 9
/** A plane over the test grid that rises by so much a metre eastwards and northwards. */
function plane(east: number, north: number) {
  const rowStep_m = (0.01 / (SIZE - 1)) * METRES_PER_DEGREE, columnStep_m = rowStep_m * Math.cos((43.005 * Math.PI) / 180)
  return gridOf(Array.from({ length: SIZE }, (_, row) => Array.from({ length: SIZE }, (__, column) => 500 + east * column * columnStep_m - north * row * rowStep_m)))
}
const middle = (shares: Float32Array) => shares[4 * SIZE + 4]

test('level ground has the sine of the light’s height', () => {
  expect(middle(hillShade(plane(0, 0)))).toBeCloseTo(Math.SQRT1_2, 6)
})

test('a slope that faces the light squarely is full light, one that faces away at the same angle is dark', () => {
  // 45° down towards the north-west.
  expect(middle(hillShade(plane(Math.SQRT1_2, -Math.SQRT1_2)))).toBeCloseTo(1, 3)
  expect(middle(hillShade(plane(-Math.SQRT1_2, Math.SQRT1_2)))).toBeCloseTo(0, 3)
})

test('light from the other side turns light and dark about', () => {
  expect(middle(hillShade(plane(-Math.SQRT1_2, Math.SQRT1_2), { azimuth_deg: 135, height_deg: 45 }))).toBeCloseTo(1, 3)
})

test('heights exaggerated show a low hill as a steeper one', () => {
  expect(middle(hillShade(plane(0.1, -0.1), undefined, 3))).toBeCloseTo(middle(hillShade(plane(0.3, -0.3))) ?? NaN, 2)
})

test('beside a gap, and at the edge, ground is shaded as level', () => {
  const rows: (number | undefined)[][] = Array.from({ length: SIZE }, (_, row) => Array.from({ length: SIZE }, () => 100 + 30 * row))
  rows[3]![4] = undefined
  const shares = hillShade(gridOf(rows))
  expect(middle(shares)).toBeCloseTo(Math.SQRT1_2, 6)
  expect(shares[0]).toBeCloseTo(Math.SQRT1_2, 6)
  expect(shares[6 * SIZE + 4]).not.toBeCloseTo(Math.SQRT1_2, 2)
})
