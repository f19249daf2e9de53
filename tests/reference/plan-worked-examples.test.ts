import { describe, expect, it } from 'vitest'
import { evaluatePlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'
import cases from './plan-worked-examples.json'

/** One tender, all times of the published example given as measured; the ends' time is split as the plan wants it. */
function planOf({ tank_gal, eachWay_s, toFill_s = eachWay_s, toDump_s = eachWay_s, handling_s }: (typeof cases)[number]['given']) {
  const usable_gal = tank_gal * 0.9
  const filling_s = (usable_gal / 1000) * 60 * 1.1
  const dumping_s = (usable_gal / 1000) * 60
  const rest_s = (handling_s - filling_s - dumping_s) / 4
  return smallBundle({
    'district.apparatus.2.tank_gal': tank_gal,
    ...Object.fromEntries(['dumpPosition_s', 'dumpClear_s', 'fillPosition_s', 'fillClear_s'].map((field) => [`district.apparatus.2.${field}`, rest_s])),
    'district.equipment.0.capacity_gal': 5000,
    'plan.fillSites.0.rate_gpm': 1000,
    'plan.tenders': [{ id: 'k1', tenderId: 't1' }],
    'plan.legNotes': [
      { id: 'l1', fromId: 'du1', toId: 'f1', travel_s: toFill_s },
      { id: 'l2', fromId: 'f1', toId: 'du1', travel_s: toDump_s },
    ],
  })
}

describe('published worked examples of a shuttle, through a whole plan', () => {
  it.each(cases)('$name', ({ given, expected_gpm, tolerance_gpm }) => {
    const { hand_gpm, hauledCapacity_gpm } = evaluatePlan(planOf(given))
    expect(Math.abs((hand_gpm ?? 0) - expected_gpm)).toBeLessThan(tolerance_gpm)
    // One tender meets no queue: the simulation must bring the same.
    expect(hauledCapacity_gpm).toBeCloseTo(hand_gpm ?? 0, 6)
  })
})
