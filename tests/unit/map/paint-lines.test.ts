import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { arrowPlaces } from '@/app/_map/paint/arrow-places'
import { offsetLine } from '@/app/_map/paint/offset-line'
import { thinLine } from '@/app/_map/paint/thin-line'

const line = fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 4, maxLength: 40 }).map((values) => values.slice(0, values.length - (values.length % 2)))

describe('a line moved sideways', () => {
  it('lies to the right of the way it goes', () => {
    expect(offsetLine([0, 0, 10, 0], 3)).toEqual([0, 3, 10, 3])
    expect(offsetLine([10, 0, 0, 0], 3)).toEqual([10, -3, 0, -3])
  })

  it('joins at corners', () => {
    const moved = offsetLine([0, 0, 10, 0, 10, 10], 2)
    expect(moved.map((value) => Math.round(value * 1e6) / 1e6)).toEqual([0, 2, 8, 2, 8, 10])
  })

  it('there and back lie on opposite sides', () => {
    const there = [0, 0, 10, 0, 20, 5]
    const back = [20, 5, 10, 0, 0, 0]
    const a = offsetLine(there, 3)
    const b = offsetLine(back, 3)
    expect(a[1]).toBe(3)
    expect(b[5]).toBe(-3)
  })

  it('has as many points, none further than twice the offset', () => {
    fc.assert(
      fc.property(line, fc.double({ min: 0.5, max: 10, noNaN: true }), (points, offset) => {
        const moved = offsetLine(points, offset)
        expect(moved).toHaveLength(points.length)
        for (let i = 0; i < points.length; i += 2) expect(Math.hypot(moved[i]! - points[i]!, moved[i + 1]! - points[i + 1]!)).toBeLessThanOrEqual(2 * offset + 1e-9)
      }),
    )
  })
})

describe('a thinned line', () => {
  it('keeps its ends, and leaves out what cannot be told apart', () => {
    expect(thinLine([0, 0, 0.5, 0, 1, 0, 9, 0, 10, 0], 2)).toEqual([0, 0, 10, 0])
  })

  it('never loses an end, and never grows', () => {
    fc.assert(
      fc.property(line, (points) => {
        const thinned = thinLine(points, 2)
        expect(thinned.slice(0, 2)).toEqual(points.slice(0, 2))
        expect(thinned.slice(-2)).toEqual(points.slice(-2))
        expect(thinned.length).toBeLessThanOrEqual(points.length)
      }),
    )
  })
})

describe('arrows', () => {
  it('stand evenly, the first half a gap from the start', () => {
    expect(arrowPlaces([0, 0, 100, 0, 100, 100], 50)).toEqual([
      { x: 25, y: 0, angle: 0 }, { x: 75, y: 0, angle: 0 }, { x: 100, y: 25, angle: Math.PI / 2 }, { x: 100, y: 75, angle: Math.PI / 2 },
    ])
  })

  it('a short line has one, a very short one none', () => {
    expect(arrowPlaces([0, 0, 20, 0], 50)).toEqual([{ x: 10, y: 0, angle: 0 }])
    expect(arrowPlaces([0, 0, 5, 0], 50)).toEqual([])
  })
})
