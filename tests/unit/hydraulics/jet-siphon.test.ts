import { describe, expect, test } from 'vitest'
import { findTenderDumpRates_gpm, jetSiphonFlow } from '@/lib/hydraulics'

const base = { tube_in: 6, jet_in: 0.75, drive_psi: 75, fall_ft: 0 }

describe('a jet siphon', () => {
  test('moves more with more pressure and with more fall', () => {
    const at = (change: Partial<typeof base>) => jetSiphonFlow({ ...base, ...change }).transfer_gpm
    expect(at({ drive_psi: 100 })).toBeGreaterThan(at({}))
    expect(at({ fall_ft: 1 })).toBeGreaterThan(at({}))
    expect(at({ fall_ft: -1 })).toBeLessThan(at({}))
  })

  test('moves nothing where the jet cannot lift so far, and still takes its drive water', () => {
    const { transfer_gpm, drive_gpm } = jetSiphonFlow({ ...base, fall_ft: -10 })
    expect(transfer_gpm).toBe(0)
    expect(drive_gpm).toBeGreaterThan(100)
  })

  test('refuses a jet as wide as its tube', () => {
    expect(() => jetSiphonFlow({ ...base, jet_in: 6 })).toThrow(RangeError)
  })
})

describe('the dump rates of a tender', () => {
  const tank = { tank_gal: 2000, usable_gal: 1800, opening: { diameter_in: 10 }, fullHead_ft: 4 } as const
  const time_min = (rates: readonly number[]) => rates.reduce((sum, rate) => sum + 1800 / rates.length / rate, 0)

  test('fall with the head under gravity and take as long as the measured average says', () => {
    const rates = findTenderDumpRates_gpm({ ...tank, way: 'gravity', average_gpm: 1200 })!
    expect(rates).toHaveLength(8)
    expect(rates.every((rate, i) => i === 0 || rate < rates[i - 1]!)).toBe(true)
    expect(time_min(rates)).toBeCloseTo(1.5, 9)
  })

  test('stop rising where vents and baffles let no more through', () => {
    const rates = findTenderDumpRates_gpm({ ...tank, way: 'gravity', cap_gpm: 1500 })!
    expect(rates[0]).toBeCloseTo(1500, 6)
    expect(rates[7]).toBeLessThan(1500)
  })

  test('are even with a jet or a pump', () => {
    expect(findTenderDumpRates_gpm({ ...tank, way: 'pump', average_gpm: 500 })).toEqual([500])
    expect(findTenderDumpRates_gpm({ ...tank, way: 'jet', average_gpm: 1800, cap_gpm: 1500 })).toEqual([1500])
  })

  test('are not known without an average or an opening', () => {
    expect(findTenderDumpRates_gpm({ way: 'gravity', tank_gal: 2000, usable_gal: 1800 })).toBeUndefined()
  })
})
