import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  dependableFlow, doubtFrom, doubtInputs, doubtOf, prepareDoubt, quantile, sampleNights, tripSpreadShare, type DoubtInput, type DoubtModel,
} from '@/lib/doubt'
import { compilePlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

/** Plans a person could make of the small one: lift, tanks, bays, road, number of tenders. */
const changes = fc.record({
  'district.draftSites.0.lift_ft': fc.integer({ min: 4, max: 18 }),
  'district.apparatus.2.tank_gal': fc.integer({ min: 1000, max: 4000 }),
  'district.apparatus.3.tank_gal': fc.integer({ min: 1000, max: 4000 }),
  'district.equipment.0.capacity_gal': fc.integer({ min: 2000, max: 6000 }),
  'plan.legNotes.0.distance_mi': fc.double({ min: 0.5, max: 5, noNaN: true }),
  'plan.fillSites.0.bayCount': fc.integer({ min: 1, max: 2 }),
  'plan.dumpSites.0.positionCount': fc.integer({ min: 1, max: 2 }),
})

const NIGHTS = 60

/** The model of a plan with every spread, of inputs and of trips, times a factor. */
function modelWith(change: Readonly<Record<string, unknown>>, spreadFactor: number): DoubtModel {
  const compiled = compilePlan(smallBundle(change))
  const inputs = doubtInputs(compiled).map((input): DoubtInput => ({ ...input, spreadShare: Math.min(0.9, input.spreadShare * spreadFactor) }))
  const tripSpread = Object.fromEntries(Object.entries(tripSpreadShare).map(([stage, share]) => [stage, share * spreadFactor]))
  const model = prepareDoubt(compiled, { inputs, tripSpread })
  if (!model) throw new Error('the plan must have an answer')
  return model
}

const widthOf = (rising: readonly number[]): number => quantile(rising, 0.9) - quantile(rising, 0.1)

describe('doubt', () => {
  test('the same seed gives the same answer, to the bit, however the nights are shared out', () => {
    fc.assert(fc.property(changes, fc.integer({ min: 0, max: 2 ** 31 - 1 }), fc.integer({ min: 1, max: NIGHTS - 1 }), (change, seed, cut) => {
      const whole = doubtOf(modelWith(change, 1), { nightCount: NIGHTS, seed })
      const model = modelWith(change, 1)
      const parts = [sampleNights(model, seed, cut, NIGHTS - cut), sampleNights(model, seed, 0, cut)]
      expect(doubtFrom(model, parts, seed)).toEqual(whole)
      expect(dependableFlow(model, { nightCount: NIGHTS, seed }).flow_gpm).toBe(whole.dependable.flow_gpm)
    }), { numRuns: 6, seed: 61, endOnFailure: true })
  })

  test('narrower spreads give narrower bands', () => {
    fc.assert(fc.property(changes, (change) => {
      const [wide, narrow] = [1, 0.25].map((factor) => doubtOf(modelWith(change, factor), { nightCount: NIGHTS }))
      expect(widthOf(narrow!.flows_gpm)).toBeLessThan(widthOf(wide!.flows_gpm))
      expect(narrow!.supplyReady.high_s - narrow!.supplyReady.low_s).toBeLessThan(wide!.supplyReady.high_s - wide!.supplyReady.low_s)
      expect(narrow!.dependable.flow_gpm).toBeGreaterThan(wide!.dependable.flow_gpm)
    }), { numRuns: 8, seed: 62, endOnFailure: true })
  })

  test('the dependable flow is never above the flow expected without doubt', () => {
    fc.assert(fc.property(changes, (change) => {
      const model = modelWith(change, 1)
      expect(dependableFlow(model, { nightCount: NIGHTS }).flow_gpm).toBeLessThanOrEqual(model.expected_gpm)
    }), { numRuns: 20, seed: 63, endOnFailure: true })
  })

  test('asking for more of the nights never promises more', () => {
    const model = modelWith({}, 1)
    const flows = [0.5, 0.7, 0.9, 0.95].map((share) => dependableFlow(model, { nightCount: 100, share }).flow_gpm)
    expect(flows).toEqual(flows.toSorted((a, b) => b - a))
  })

  test('more nights settle: other nights move the answer less, by about the root of their number', () => {
    const model = modelWith({}, 1)
    const scatter = (nightCount: number) => {
      const flows = Array.from({ length: 6 }, (_, seed) => dependableFlow(model, { nightCount, seed }).flow_gpm)
      const mean = flows.reduce((sum, flow) => sum + flow, 0) / flows.length
      return Math.sqrt(flows.reduce((sum, flow) => sum + (flow - mean) ** 2, 0) / (flows.length - 1))
    }
    // Eighteen times the nights: a quarter of the scatter; half is asked for, six seeds being few.
    expect(scatter(360)).toBeLessThan(scatter(20) / 2)
  })

  test('bands are in order, and what is short is a share', () => {
    fc.assert(fc.property(changes, (change) => {
      const { tanks, delivered_gal, planned } = doubtOf(modelWith(change, 1), { nightCount: 30 })
      for (const { low, middle, high } of [delivered_gal, ...tanks.map(({ level_gal }) => level_gal)]) {
        low.forEach((value, t) => {
          expect(value).toBeLessThanOrEqual(middle[t]!)
          expect(middle[t]!).toBeLessThanOrEqual(high[t]!)
        })
      }
      // Given once, water is not taken back; having failed once is not undone.
      delivered_gal.middle.forEach((value, t) => expect(value).toBeGreaterThanOrEqual(delivered_gal.middle[t - 1] ?? 0))
      planned!.failedShare.forEach((share, t) => expect(share).toBeGreaterThanOrEqual(planned!.failedShare[t - 1] ?? 0))
      expect([...planned!.shortShare, ...planned!.failedShare].every((share) => share >= 0 && share <= 1)).toBe(true)
    }), { numRuns: 5, seed: 64, endOnFailure: true })
  })
})
