import { describe, expect, it } from 'vitest'
import { dumpAlone_s, roundOf } from '@/lib/shuttle/round-of'
import type { TenderSpec } from '@/lib/shuttle'

const tender = {
  id: 't', usable_gal: 1800, fillLimit_gpm: 1000, topUpShare: 0.1, topUpRateShare: 0.5, dumpRate_gpm: [1200, 600],
  dumpPosition_s: 30, dumpClear_s: 15, fillPosition_s: 60, fillClear_s: 20, toFill_s: 240, toDump_s: 300, fillIndex: 0, dumpIndex: 0,
} as unknown as TenderSpec

describe('a round with nobody in the way', () => {
  it('is filling with a slow last tenth, dumping part by part, driving and handling (worked by hand)', () => {
    // Fill: 1,620 gal at 900 gpm are 108 s, 180 gal at 450 gpm are 24 s. Dump: 900 gal at 1,200 are 45 s, 900 at 600 are 90 s.
    const round = roundOf(tender, 900)
    expect(round.fill_s).toBeCloseTo(132, 9)
    expect(round.dump_s).toBeCloseTo(135, 9)
    expect(round.handling_s).toBe(125)
    expect(round.travel_s).toBe(540)
    expect(round.cycle_s).toBeCloseTo(932, 9)
    expect(dumpAlone_s(tender)).toBeCloseTo(135, 9)
  })

  it('fills no quicker than the tender takes it', () => {
    expect(roundOf(tender, 5000).fill_s).toBeCloseTo(roundOf(tender, 1000).fill_s, 9)
  })

  it('leaves filling out where there is no bay', () => {
    expect(roundOf(tender, 0).fill_s).toBe(0)
  })
})
