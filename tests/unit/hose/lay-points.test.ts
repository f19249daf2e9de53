import { describe, expect, test } from 'vitest'
import { withHalfway, withPoint } from '@/app/_hose/lay-points'

const at = (lat: number, lon = 0) => ({ lat, lon })
const way = [at(0), at(0.01), at(0.04)]

describe('points of a way', () => {
  test('a point halfway goes into the longest leg', () => {
    expect(withHalfway(way)).toEqual([at(0), at(0.01), at(0.025), at(0.04)])
  })

  test('a point placed goes where it makes the way least longer, never before the begin or behind the end', () => {
    expect(withPoint(way, at(0.02, 0.001))).toEqual([at(0), at(0.01), at(0.02, 0.001), at(0.04)])
    expect(withPoint(way, at(-0.01))).toEqual([at(0), at(-0.01), at(0.01), at(0.04)])
    expect(withPoint(way, at(0.06))).toEqual([at(0), at(0.01), at(0.06), at(0.04)])
  })
})
