import { describe, expect, test } from 'vitest'
import { handbookTravel_s } from '@/lib/hydraulics'
import { compileShuttle, hauledCapacity, runShuttle } from '@/lib/shuttle'
import { dumpSite, fillSite, layout, tender } from '../../unit/shuttle/layout'
import drills from './drills.json'

type Manner = (typeof drills.massachusetts)['cautious']

/** Haul over a drill that begins with all tenders full at the dump site, as drills do. */
function haulOf_gpm(tanks_gal: readonly number[], distance_mi: number, manner: Manner, places: { bays: number; positions: number; fillSites?: number }, lasts_s = 5400): number {
  const travel_s = handbookTravel_s(distance_mi, manner.average_mph)
  const fillSites = places.fillSites ?? 1
  return hauledCapacity(compileShuttle(layout({
    horizon_s: 40_000,
    fills: Array.from({ length: fillSites }, (_, f) => fillSite({ id: `fill-${f}`, bayCount: places.bays, bayRate_gpm: Array<number>(places.bays).fill(manner.rate_gpm) })),
    dumps: [dumpSite({ positionCount: places.positions, capacity_gal: 6000 })],
    tenders: tanks_gal.map((tank_gal, i) => tender({
      id: `T${i}`, arrive_s: 0, usable_gal: tank_gal * manner.usableShare, toFill_s: travel_s, toDump_s: travel_s, fillIndex: i % fillSites,
      dumpPosition_s: manner.dumpPosition_s, dumpClear_s: manner.clear_s, fillPosition_s: manner.fillPosition_s, fillClear_s: manner.clear_s,
      dumpRate_gpm: [manner.rate_gpm], fillLimit_gpm: manner.rate_gpm,
    })),
  })), { afterReady_s: lasts_s }).hauledCapacity_gpm
}

const { massachusetts, newYork, ruleOfThumb, firstAlarm, minimumVolume } = drills

describe('drills as reported', () => {
  test(massachusetts.name, () => {
    const { given, reported, cautious, brisk } = massachusetts
    const step_gal = (given.largest_gal - given.smallest_gal) / (given.tenders - 1)
    const tanks_gal = Array.from({ length: given.tenders }, (_, i) => given.smallest_gal + i * step_gal)
    expect(reported.total_gal / given.duration_min).toBeCloseTo(reported.flow_gpm, 0)
    const low_gpm = haulOf_gpm(tanks_gal, given.distance_mi, cautious, { bays: cautious.places, positions: cautious.places })
    const high_gpm = haulOf_gpm(tanks_gal, given.distance_mi, brisk, { bays: brisk.places, positions: brisk.places })
    expect(low_gpm).toBeLessThan(reported.flow_gpm)
    expect(high_gpm).toBeGreaterThan(reported.flow_gpm)
    // A bracket of any width would pass: these two lie within a factor of 2.5 of each other.
    expect(high_gpm / low_gpm).toBeLessThan(2.5)
  })

  test(newYork.name, () => {
    const { given, reachableWithin_mi, notBeyond_mi } = newYork
    const at = (distance_mi: number) => haulOf_gpm(Array<number>(given.tenders).fill(2500), distance_mi, massachusetts.brisk, { bays: 2, positions: 3, fillSites: given.fillSites }, 7200)
    expect(at(reachableWithin_mi)).toBeGreaterThan(given.peak_gpm)
    expect(at(notBeyond_mi)).toBeLessThan(given.peak_gpm)
  })

  test.each([1, 2, 3])(`${ruleOfThumb.name}, %i miles`, (distance_mi) => {
    const manner = { ...massachusetts.cautious, average_mph: 35 }
    const { least, most, flow_gpm } = ruleOfThumb.given
    const needed = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].find((count) => haulOf_gpm(Array<number>(count).fill(2500), distance_mi, manner, { bays: 2, positions: 2 }) >= flow_gpm)
    // On the shortest road fewer do; never are more than seven needed.
    expect(needed).toBeLessThanOrEqual(most)
    if (distance_mi > 1) expect(needed).toBeGreaterThanOrEqual(least)
    expect(haulOf_gpm(Array<number>(most).fill(2000), distance_mi, manner, { bays: 2, positions: 2 })).toBeGreaterThanOrEqual(flow_gpm)
  })

  test('the same rule is not borne out at ten miles', () => {
    const manner = { ...massachusetts.cautious, average_mph: 35 }
    expect(haulOf_gpm(Array<number>(ruleOfThumb.given.most).fill(2500), ruleOfThumb.fails_mi, manner, { bays: 2, positions: 2 }, 20_000)).toBeLessThan(ruleOfThumb.given.flow_gpm)
  })
})

describe('published sums', () => {
  test(firstAlarm.name, () => {
    const { given, expected_min, tolerance_min } = firstAlarm
    const run = runShuttle(compileShuttle(layout({
      horizon_s: 3600,
      tenders: [tender({ arrive_s: 3500 })],
      demand: { stages: [{ from_s: 0, flow_gpm: given.flow_gpm }], firstDue: { arrive_s: 0, tank_gal: given.tank_gal }, reserve_s: 120 },
    })))
    expect(Math.abs((run.engineEmpty_s ?? 0) / 60 - expected_min)).toBeLessThanOrEqual(tolerance_min)
    expect(run.engineEmpty_s).toBeGreaterThan(20 * 60)
  })

  test(minimumVolume.name, () => {
    const { given, expected_gal, tolerance_gal } = minimumVolume
    const lasts_s = given.duration_h * 3600
    const run = runShuttle(compileShuttle(layout({
      horizon_s: lasts_s,
      tenders: [tender({ arrive_s: lasts_s })],
      demand: { stages: [{ from_s: 0, flow_gpm: given.flow_gpm }], firstDue: { arrive_s: 0, tank_gal: 40_000 }, reserve_s: 120 },
    })))
    expect(Math.abs(run.delivered_gal - expected_gal)).toBeLessThanOrEqual(tolerance_gal)
  })
})
