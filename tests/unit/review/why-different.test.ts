import { describe, expect, test } from 'vitest'
import { costMost, differenceOf, shapleyValues, type Cause } from '@/lib/review'
import { layout } from '../shuttle/layout'
import { asPlanned, tripsOf } from './support'

const spec = layout({ demand: { stages: [], reserve_s: 120 } })
const partsOf = (lines: string, plan = spec, end_s = 1060) => {
  const found = differenceOf(tripsOf(lines, plan, end_s), plan)!.difference
  return { ...found, of: (cause: Cause) => found.parts.find((part) => part.cause === cause)!.gpm }
}

describe('why a log differs from its plan', () => {
  test('a log as planned differs by nothing', () => {
    const { planned_gpm, achieved_gpm, parts, unexplained_gpm } = partsOf(asPlanned)
    expect(achieved_gpm).toBeCloseTo(planned_gpm, 6)
    for (const { gpm } of parts) expect(gpm).toBeCloseTo(0, 6)
    expect(unexplained_gpm).toBeCloseTo(0, 6)
  })

  // Two loads where the plan brings three by then: what is slower stands alone, so all of the difference is its part.
  test('a slow road is travel and nothing else', () => {
    const slow = asPlanned.replace(/(fill \w+|dump \w+) (\d+)/g, (_, what: string, at: string) => `${what} ${Number(at) + (Number(at) > 500 ? 500 : 0) + (Number(at) > 900 ? 500 : 0)}`)
    const found = partsOf(slow, spec, 2060)
    expect(found.achieved_gpm - found.planned_gpm).toBeLessThan(-20)
    expect(found.of('travel')).toBeCloseTo(found.achieved_gpm - found.planned_gpm, 6)
  })

  test('a tender that never came costs what the plan counted on', () => {
    const two = layout({ demand: { stages: [], reserve_s: 120 }, tenders: [spec.tenders[0]!, { ...spec.tenders[0]!, id: 'T2', arrive_s: 500 }] })
    const found = partsOf(asPlanned, two)
    expect(found.of('tenders')).toBeLessThan(-30)
    expect(found.of('tenders')).toBeCloseTo(found.achieved_gpm - found.planned_gpm, 6)
  })

  test('a tender that starts late is a late start', () => {
    const late = asPlanned.replace(/(fill \w+|dump \w+) (\d+)/g, (_, what: string, at: string) => `${what} ${Number(at) + 900}`)
    const found = partsOf(late, spec, 1960)
    expect(found.of('start')).toBeCloseTo(found.achieved_gpm - found.planned_gpm, 6)
    expect(found.of('start')).toBeLessThan(0)
  })

  test('without a load there is nothing to split', () => {
    expect(differenceOf(tripsOf('fill arrived 30', spec), spec)).toBeUndefined()
    expect(differenceOf(tripsOf('', spec, 0), spec)).toBeUndefined()
  })
})

describe('Shapley value', () => {
  // Glove game: players 0 and 1 hold a left glove each, player 2 a right one; a pair is worth 1. Value (1/6, 1/6, 4/6): textbook example, from memory.
  test('of the glove game', () => {
    const worth = (set: number) => ((set & 4) && (set & 3) ? 1 : 0)
    const [first, second, third] = shapleyValues(3, worth)
    expect(first).toBeCloseTo(1 / 6, 12)
    expect(second).toBeCloseTo(1 / 6, 12)
    expect(third).toBeCloseTo(4 / 6, 12)
  })

  // Airport game: runways of 1, 2 and 3 for three aircraft; the Shapley value shares each further stretch among those who need it (Littlechild and Owen 1973, from memory).
  test('of the airport game', () => {
    const costs = [1, 2, 3]
    const values = shapleyValues(3, (set) => Math.max(0, ...costs.filter((_, k) => (set >> k) & 1)))
    expect(values[0]).toBeCloseTo(1 / 3, 12)
    expect(values[1]).toBeCloseTo(1 / 3 + 1 / 2, 12)
    expect(values[2]).toBeCloseTo(1 / 3 + 1 / 2 + 1, 12)
  })

  test('of nobody is nothing', () => { expect(shapleyValues(0, () => 5)).toEqual([]) })
})

test('a part stands out only where it cost more than the log can be off by', () => {
  const one = (gpm: number) => ({ planned_gpm: 520, achieved_gpm: 525, parts: [{ cause: 'hookUp', gpm }, { cause: 'travel', gpm: -2 }] as const, unexplained_gpm: 0, bound_gpm: 36 })
  expect(costMost(one(-6))).toBeUndefined()
  expect(costMost(one(-40))).toEqual({ cause: 'hookUp', gpm: -40 })
})
