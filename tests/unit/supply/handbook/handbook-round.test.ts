import { describe, expect, it } from 'vitest'
import { annexRound, ratingRound } from '@/lib/supply'

const min = (minutes: number) => minutes * 60

describe('the hauled-water forms', () => {
  it('S1, lesson plan Water Shuttle Operations (seen): 3,000 gal, 12 minutes a full cycle, one mile: 225 gpm', () => {
    // 0.65 + 1.7 · 1 = 2.35 min of road; the rest of the 12 at both ends, however it is split.
    const round = ratingRound({ tank_gal: 3000, toFill_mi: 0.5, toDump_mi: 0.5, average_mph: 35, fillSite_s: min(6), dumpSite_s: min(3.65) })
    expect(round.round_s).toBeCloseTo(min(12), 9)
    expect(round.flow_gpm).toBeCloseTo(225, 9)
  })

  it('S2, lesson plan Water Shuttle Operations (seen): 2,500 gal, 3 miles in all, 9 minutes of handling: 153 gpm', () => {
    const round = ratingRound({ tank_gal: 2500, toFill_mi: 1.5, toDump_mi: 1.5, average_mph: 35, fillSite_s: min(6), dumpSite_s: min(3) })
    expect(round.toFill_s + round.toDump_s).toBeCloseTo(min(5.75), 9)
    expect(Math.round(round.flow_gpm)).toBe(153)
  })

  it('S4, NFPA 1142 annex example (from memory): A 3.0, B 4.0, 2.10 and 1.80 miles: T1 4.22, T2 3.71, 90 gpm', () => {
    const round = annexRound({ tank_gal: 1500, toFill_mi: 2.1, toDump_mi: 1.8, average_mph: 35, fillSite_s: min(4), dumpSite_s: min(3) })
    expect(round.toFill_s / 60).toBeCloseTo(4.22, 9)
    expect(round.toDump_s / 60).toBeCloseTo(3.71, 9)
    expect(Math.round(round.flow_gpm)).toBe(90)
  })

  it('the two forms differ by 0.65 minutes of the round and nothing else (conflict between the sources)', () => {
    const inputs = { tank_gal: 2000, toFill_mi: 2, toDump_mi: 3, average_mph: 35, fillSite_s: 300, dumpSite_s: 200 }
    expect(annexRound(inputs).round_s - ratingRound(inputs).round_s).toBeCloseTo(min(0.65), 9)
  })

  it('takes 60/V minutes a mile at other speeds: 2.40 at 25 mph (NFPA 1142 annex column, from memory)', () => {
    expect(annexRound({ tank_gal: 1000, toFill_mi: 1, toDump_mi: 0, average_mph: 25, fillSite_s: 60, dumpSite_s: 60 }).toFill_s / 60).toBeCloseTo(0.65 + 2.4, 9)
  })

  it('refuses a tank of nothing and a negative way', () => {
    const inputs = { tank_gal: 1000, toFill_mi: 1, toDump_mi: 1, average_mph: 35, fillSite_s: 60, dumpSite_s: 60 }
    expect(() => ratingRound({ ...inputs, tank_gal: 0 })).toThrow(RangeError)
    expect(() => annexRound({ ...inputs, toFill_mi: -1 })).toThrow(RangeError)
  })
})
