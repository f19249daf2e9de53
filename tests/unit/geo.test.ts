import { describe, expect, test } from 'vitest'
import { alongM, distanceM, METRES_PER_DEGREE, pointAlong } from '@/lib/geo'

const at = (lat: number, lon = 0) => ({ lat, lon })
const way = [at(0), at(0.01), at(0.04)]

describe('a line on the ground', () => {
  // Along a meridian a degree is R·π/180 (sphere of mean radius, IUGG, published).
  test('is as long to each of its points as the legs before it together', () => {
    const along_m = alongM(way)
    expect(along_m).toHaveLength(3)
    expect(along_m[0]).toBe(0)
    expect(along_m[1]).toBeCloseTo(0.01 * METRES_PER_DEGREE, 6)
    expect(along_m[2]).toBeCloseTo(distanceM(way[0]!, way[1]!) + distanceM(way[1]!, way[2]!), 9)
    expect([alongM([]), alongM([at(1)])]).toEqual([[], [0]])
  })

  test('has a place at every share of its length, its ends beyond', () => {
    expect(pointAlong(way, 0)).toEqual(at(0))
    expect(pointAlong(way, 0.25).lat).toBeCloseTo(0.01, 9)
    expect(pointAlong(way, 0.5).lat).toBeCloseTo(0.02, 9)
    expect(pointAlong(way, 1).lat).toBeCloseTo(0.04, 9)
    expect([pointAlong(way, -1), pointAlong(way, 2)]).toEqual([at(0), at(0.04)])
  })

  test('may have a point twice, or only one', () => {
    expect(pointAlong([at(0), at(0), at(0.02)], 0.5).lat).toBeCloseTo(0.01, 9)
    expect(pointAlong([at(3, 4)], 0.7)).toEqual(at(3, 4))
    expect(() => pointAlong([], 0.5)).toThrow(RangeError)
  })
})
