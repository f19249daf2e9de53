import { describe, expect, test } from 'vitest'
import { advance, begin, compileShuttle, hauledCapacity, withDemand, type ShuttleSpec } from '@/lib/shuttle'
import { dumpSite, fillSite, layout, tender } from '../../unit/shuttle/layout'
import reference from './closed-queue.json'
import { machineRepair, meanValues } from './mean-value'

describe('queueing theory as published', () => {
  test(reference.machineRepair.name, () => {
    const { given, expected, tolerance } = reference.machineRepair
    const { p, lq, l, wq, w } = machineRepair(given.customers, 1 / given.meanRun_h, 1 / given.meanRepair_h)
    const pairs = [
      [p[0], expected.p0], [p[1], expected.p1], [p[2], expected.p2], [p[3], expected.p3],
      [lq, expected.lq], [l, expected.l], [wq, expected.wq_h], [w, expected.w_h],
    ]
    for (const [ours, theirs] of pairs) expect(Math.abs(ours! - theirs!)).toBeLessThanOrEqual(tolerance)
  })

  test.each(reference.databaseServer.expected)(`${reference.databaseServer.name}, $customers customers`, ({ customers, perMinute, queue }) => {
    const { given, tolerance } = reference.databaseServer
    const ours = meanValues(given.demands_s, given.delay_s, customers)
    expect(Math.abs(ours.throughput * 60 - perMinute)).toBeLessThanOrEqual(tolerance)
    queue.forEach((mean, i) => expect(Math.abs(ours.queue[i]! - mean)).toBeLessThanOrEqual(tolerance))
  })

  test.each(reference.courseNote.expected)(`${reference.courseNote.name}, $customers customers`, ({ customers, perSecond, queue, residence_s }) => {
    const { given, tolerance } = reference.courseNote
    const ours = meanValues(given.demands_s, given.delay_s, customers)
    expect(Math.abs(ours.throughput - perSecond)).toBeLessThanOrEqual(tolerance)
    queue?.forEach((mean, i) => expect(Math.abs(ours.queue[i]! - mean)).toBeLessThanOrEqual(tolerance))
    residence_s?.forEach((mean, i) => expect(Math.abs(ours.residence[i]! - mean)).toBeLessThanOrEqual(tolerance))
  })
})

const { given, expected_gpm, constantTimes, tolerance_gpm } = reference.shuttleShaped

/** The shuttle of V4: filling and dumping are the whole of the time at the sites. */
const shuttleOf = (count: number, horizon_s: number): ShuttleSpec => layout({
  horizon_s,
  fills: [fillSite({ bayRate_gpm: [given.usable_gal / given.fill_min] })],
  dumps: [dumpSite()],
  tenders: Array.from({ length: count }, (_, i) => tender({
    id: `T${i}`, arrive_s: 0, usable_gal: given.usable_gal, toFill_s: given.road_min * 30, toDump_s: given.road_min * 30,
    dumpPosition_s: 0, dumpClear_s: 0, fillPosition_s: 0, fillClear_s: 0,
    dumpRate_gpm: [given.usable_gal / given.dump_min], fillLimit_gpm: 1e6,
  })),
})

/** Student's t, 99 % two-sided, 29 degrees of freedom: general statistical table. */
const T_99_29 = 2.756
const BATCHES = 30
const BATCH_S = 300 * 3600

/** Mean haul over batches of simulated time after a warm-up, and half its 99 % confidence interval. */
function simulatedHaul(count: number): { mean_gpm: number; half_gpm: number } {
  const scenario = withDemand(compileShuttle(shuttleOf(count, BATCH_S * (BATCHES + 1)), { exponential: true }), 'open')
  const state = begin(scenario)
  const loads = () => state.rounds.reduce((sum, rounds) => sum + rounds, 0)
  advance(scenario, state, BATCH_S)
  let before = loads()
  const batches_gpm = Array.from({ length: BATCHES }, (_, batch) => {
    advance(scenario, state, BATCH_S * (batch + 2))
    const gpm = ((loads() - before) * given.usable_gal) / (BATCH_S / 60)
    before = loads()
    return gpm
  })
  const mean_gpm = batches_gpm.reduce((sum, gpm) => sum + gpm, 0) / BATCHES
  const variance = batches_gpm.reduce((sum, gpm) => sum + (gpm - mean_gpm) ** 2, 0) / (BATCHES - 1)
  return { mean_gpm, half_gpm: T_99_29 * Math.sqrt(variance / BATCHES) }
}

describe(reference.shuttleShaped.name, () => {
  test.each(expected_gpm.map((gpm, i) => ({ tenders: i + 1, gpm })))('$tenders tenders: theory says $gpm gpm', ({ tenders, gpm }) => {
    const theory = meanValues([given.fill_min, given.dump_min], given.road_min, tenders).throughput * given.usable_gal
    expect(Math.abs(theory - gpm)).toBeLessThanOrEqual(tolerance_gpm + 1e-9)
    const { mean_gpm, half_gpm } = simulatedHaul(tenders)
    expect(half_gpm).toBeLessThan(0.01 * gpm)
    expect(Math.abs(mean_gpm - theory)).toBeLessThanOrEqual(half_gpm)
  })

  test.each([1, 2, 3, 4, 5, 6, 7, 8])('%i tenders with constant times bring the bound exactly', (tenders) => {
    const { hauledCapacity_gpm } = hauledCapacity(compileShuttle(shuttleOf(tenders, 20 * 3600)), { afterReady_s: 10 * 3600 })
    const bound_gpm = Math.min(constantTimes.perTender_gpm * tenders, constantTimes.atMost_gpm)
    expect(hauledCapacity_gpm / bound_gpm).toBeCloseTo(1, 9)
  })
})
