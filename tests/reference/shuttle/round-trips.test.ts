import { describe, expect, test } from 'vitest'
import { compileShuttle, hauledCapacity } from '@/lib/shuttle'
import { fillSite, layout, tender } from '../../unit/shuttle/layout'
import cases from './round-trips.json'

describe('worked examples of a round', () => {
  test.each(cases)('$name', ({ given, expected_gpm, tolerance_gpm }) => {
    const usable_gal = given.tank_gal * (1 - given.lessShare)
    const half = (minutes: number) => (minutes * 60) / 4
    const scenario = compileShuttle(layout({
      fills: [fillSite({ bayRate_gpm: [usable_gal / (given.fillSite_min / 2)] })],
      tenders: [tender({
        usable_gal, toFill_s: given.toFill_min * 60, toDump_s: given.toDump_min * 60, fillLimit_gpm: 1e6,
        dumpPosition_s: half(given.dumpSite_min), dumpClear_s: half(given.dumpSite_min), dumpRate_gpm: [usable_gal / (given.dumpSite_min / 2)],
        fillPosition_s: half(given.fillSite_min), fillClear_s: half(given.fillSite_min),
      })],
    }))
    expect(Math.abs(hauledCapacity(scenario).hauledCapacity_gpm - expected_gpm)).toBeLessThanOrEqual(tolerance_gpm)
  })
})

describe('constant times and no bunching', () => {
  const grid = [1, 2, 3, 5, 8, 12].flatMap((tenders) =>
    [1, 2, 3].flatMap((positions) => [1, 2].flatMap((bays) => [0, 37].map((spacing_s) => ({ tenders, positions, bays, spacing_s })))))

  test.each(grid)('$tenders tenders, $positions positions, $bays bays, $spacing_s s apart: N·V/cycle or what the places let through', (at) => {
    const { tenders, positions, bays, spacing_s } = at
    // 1,000 gal: 120 s in the position, 180 s in the bay, 600 s on the road.
    const scenario = compileShuttle({
      ...layout({ horizon_s: 60 * 3600 }),
      fills: [fillSite({ bayCount: bays, bayRate_gpm: Array.from({ length: bays }, () => 500) })],
      dumps: [{ ...layout().dumps[0]!, positionCount: positions }],
      tenders: Array.from({ length: tenders }, (_, i) => tender({ id: `T${i}`, arrive_s: 100 + i * spacing_s })),
    })
    const haul = hauledCapacity(scenario, { afterReady_s: 40 * 3600 })
    const bound_gpm = Math.min((tenders * 1000) / 15, (positions * 1000) / 2, (bays * 1000) / 3)
    expect(haul.hauledCapacity_gpm / bound_gpm).toBeCloseTo(1, 9)
  })
})
