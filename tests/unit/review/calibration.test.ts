import { describe, expect, test } from 'vitest'
import { calibrate, shareInterval } from '@/lib/review'

describe('interval of a share', () => {
  // R. G. Newcombe, Statistics in Medicine 17 (1998), table I, method 3 (from memory).
  test.each([[81, 263, 0.2553, 0.3662], [15, 148, 0.0624, 0.1605], [0, 20, 0, 0.1611], [1, 29, 0.0061, 0.1718]])('%i of %i lies in the published Wilson interval', (held, count, low, high) => {
    const { lowShare, highShare } = shareInterval(held, count)
    expect(lowShare).toBeCloseTo(low, 3)
    expect(highShare).toBeCloseTo(high, 3)
  })

  test('needs something counted', () => { expect(() => shareInterval(0, 0)).toThrow(RangeError) })
})

describe('whether promises held', () => {
  const nights_gpm = Array.from({ length: 100 }, (_, k) => 100 + k)
  const log = (held_gpm: number, isUntested = false) => ({ logId: String(held_gpm), nights_gpm, held_gpm, isUntested })

  test('a flow promised with nine chances in ten is the one met in nine nights of ten', () => {
    expect(calibrate([log(110), log(109)], [0.9])).toMatchObject([{ heldCount: 1, count: 2, heldShare: 0.5 }])
  })

  test('logs that asked for less than was promised do not count', () => {
    expect(calibrate([log(50, true)])).toEqual([])
    expect(calibrate([log(50, true), log(300)], [0.9])).toMatchObject([{ heldCount: 1, count: 1 }])
  })

  test('without a log there is no row', () => { expect(calibrate([])).toEqual([]) })
})
