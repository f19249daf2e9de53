import { describe, expect, it } from 'vitest'
import { dependableFlow, doubtInputs, prepareDoubt, shareError } from '@/lib/doubt'
import { compilePlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

/**
 * A plan that lives on its haul alone (no reserve, large tanks, nobody waits), with one doubt. The flow is then
 *
 *   Q(f) = Σ V / (A + f · B),   A the part of the round that does not change, B the part that does,
 *
 * and since Q falls as f rises, nine nights in ten hold Q at the nine-tenths point of f, which for a
 * symmetric triangular f is 1 + s (1 − √0.2). Worked by hand from the textbook distribution.
 */
const plan = {
  'district.equipment.0.capacity_gal': 20_000,
  'plan.reserve_s': 0,
  'plan.dumpSites.0.draftLimit_in': 0,
  'plan.dumpSites.0.positionCount': 2,
  'plan.fillSites.0.bayCount': 2,
  // Both bays may run at full rate, so that a round is the same whoever else is there.
  'plan.fillSites.0.rate_gpm': 4000,
  'district.apparatus.2.fillLimit_gpm': 1000,
  'district.apparatus.3.fillLimit_gpm': 1000,
}
const NIGHTS = 1500
const load_gal = 1800
/** 0.65 + 60/35 · 2 mi, both ways. */
const drive_s = 2 * 60 * (0.65 + (60 / 35) * 2)
const dump_s = 108
const fill_s = 118.8
const handling_s = 75 + 30 + 60 + 30
const round_s = drive_s + dump_s + fill_s + handling_s

function dependableWith(key: string, nightCount = NIGHTS) {
  const compiled = compilePlan(smallBundle(plan))
  const inputs = doubtInputs(compiled).filter((input) => input.key === key)
  expect(inputs).toHaveLength(1)
  const model = prepareDoubt(compiled, { inputs, tripSpread: {} })
  if (!model) throw new Error('the plan has an answer')
  return { spread: inputs[0]!.spreadShare, ...dependableFlow(model, { nightCount }), expected_gpm: model.expected_gpm }
}

/** Point of a symmetric triangular factor below which a share of its draws lies, above the middle. */
const factorAt = (spread: number, share: number) => 1 + spread * (1 - Math.sqrt(2 * (1 - share)))

describe('a plan with one doubt has the dependable flow of its closed form', () => {
  const error = shareError(0.9, NIGHTS)
  const within = (flow_gpm: number, at: (share: number) => number) => {
    // Three standard errors of the share, and the resolution of the flow search on either side.
    expect(flow_gpm).toBeGreaterThan(at(0.9 + 3 * error) - 0.5)
    expect(flow_gpm).toBeLessThan(at(0.9 - 3 * error) + 0.5)
  }

  it('without the doubt it is the haul', () => {
    expect(dependableWith('road du1~f1/travel_s', 1).expected_gpm).toBeCloseTo((2 * load_gal * 60) / round_s, 3)
  })

  it('when the road’s speed is in doubt', () => {
    const { flow_gpm, spread } = dependableWith('road du1~f1/travel_s')
    expect(spread).toBe(0.2)
    within(flow_gpm, (share) => (2 * load_gal * 60) / (round_s - drive_s + factorAt(spread, share) * drive_s))
  })

  it('when the time to get into position is in doubt', () => {
    const { flow_gpm, spread } = dependableWith('default/dumpPosition_s=75')
    expect(spread).toBe(0.5)
    within(flow_gpm, (share) => (2 * load_gal * 60) / (round_s - 75 + factorAt(spread, share) * 75))
  })

  it('when the rate of dumping is in doubt: time goes with one over it', () => {
    const { flow_gpm, spread } = dependableWith('default/dump_gpm=1000')
    expect(spread).toBe(0.3)
    // The flow rises with the rate: nine nights in ten lie above the tenth part of it.
    within(flow_gpm, (share) => (2 * load_gal * 60) / (round_s - dump_s + dump_s / (1 - spread * (1 - Math.sqrt(2 * (1 - share))))))
  })
})
