import { describe, expect, test } from 'vitest'
import { criterionShown, heldFlow_gpm, type Load } from '@/lib/review'

const load = (from_s: number, upTo_s: number, kept_gal = 1000): Load =>
  ({ tenderId: 'T', from_s, upTo_s, took_s: upTo_s - from_s, whole_gal: kept_gal, given_gal: kept_gal, kept_gal, isDone: true, isAssumed: false })
/** 1,000 gal every 200 s from 300 s on: 300 gpm. */
const steady = Array.from({ length: 50 }, (_, k) => load(300 + 200 * k, 400 + 200 * k))
const asked = { flow_gpm: 250, from_s: 600, for_s: 7200 }
const reading = (at_s: number, value: number) => ({ id: `r${at_s}`, at_s, kind: 'flow' as const, post: { kind: 'attack' as const }, value })

describe('250 gpm from 5 minutes after arrival for 2 hours', () => {
  test('is met by water enough, and says that no flow was read', () => {
    expect(criterionShown(asked, steady, [], 0, 9000)).toMatchObject({ verdict: 'pass', basis: 'water', readingCount: 0 })
  })

  test('is met by readings', () => {
    const readings = Array.from({ length: 20 }, (_, k) => reading(500 + 600 * k, 260))
    expect(criterionShown(asked, steady, readings, 0, 9000)).toMatchObject({ verdict: 'pass', basis: 'readings', lowest_gpm: 260 })
  })

  test('fails at the reading that is below', () => {
    expect(criterionShown(asked, steady, [reading(700, 300), reading(1500, 200)], 0, 9000)).toMatchObject({ verdict: 'fail', fails_s: 1500, basis: 'readings' })
  })

  // 2,000 gal by 600 s, 250 gpm: dry after 8 minutes.
  test('fails at the moment the water is used up', () => {
    expect(criterionShown(asked, [load(300, 400), load(500, 600)], [], 0, 9000).fails_s).toBeCloseTo(600 + 480, 6)
    expect(criterionShown(asked, [load(300, 400), load(500, 600)], [], 500, 9000).fails_s).toBeCloseTo(600 + 600, 6)
  })

  test('is not known where the log ends before, or holds nothing', () => {
    expect(criterionShown(asked, steady, [], 0, 5000)).toMatchObject({ verdict: 'unknown', shownUpTo_s: 5000 })
    expect(criterionShown(asked, [], [], 0, 0)).toMatchObject({ verdict: 'unknown' })
  })
})

describe('what was asked for and met is no test of more', () => {
  const stages = [{ from_s: 0, flow_gpm: 180 }, { from_s: 1800, flow_gpm: 300 }]

  test('a reading of all that was asked for then is no failure', () => {
    expect(criterionShown(asked, steady, [reading(720, 180)], 0, 9000, stages)).toMatchObject({ verdict: 'unknown', untested: { at_s: 720, asked_gpm: 180 } })
  })

  test('less than was asked for then, or less once all was asked for, is one', () => {
    expect(criterionShown(asked, steady, [reading(720, 120)], 0, 9000, stages)).toMatchObject({ verdict: 'fail', fails_s: 720 })
    expect(criterionShown(asked, steady, [reading(720, 180), reading(2400, 200)], 0, 9000, stages)).toMatchObject({ verdict: 'fail', fails_s: 2400 })
  })

  // 2,000 gal by 600 s: at 180 gpm for 667 s; at 250 gpm dry at 1,080 s, after 480 s.
  test('water enough for what was asked for is no failure; too little for that too is one', () => {
    const loads = [load(300, 400), load(500, 600)]
    expect(criterionShown(asked, loads, [], 0, 1200, stages)).toMatchObject({ verdict: 'unknown', untested: { asked_gpm: 180 } })
    expect(criterionShown(asked, loads, [], 0, 9000, stages).fails_s).toBeCloseTo(600 + (2000 / 180) * 60, 6)
  })
})

describe('constant flow that was held', () => {
  test('is no more than came on average', () => { expect(heldFlow_gpm(steady, 10_200)).toBeCloseTo(300, 0) })
  test('of a short log is not known', () => {
    expect(heldFlow_gpm([], 100)).toBeUndefined()
    expect(heldFlow_gpm(steady, 900)).toBeUndefined()
  })
  test('falls when nothing more comes', () => { expect(heldFlow_gpm(steady.slice(0, 10), 9000)!).toBeLessThan(100) })
})
