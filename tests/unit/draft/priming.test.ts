import { describe, expect, it } from 'vitest'
import type { Pumper } from '@/lib/plan'
import { findDraftSheet, primingOf } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const primed = (known: Partial<Pumper>, changes: Readonly<Record<string, unknown>> = {}) => {
  const { district } = smallBundle(changes)
  const pump = { ...district.apparatus[0], ...known } as Pumper
  return primingOf(findDraftSheet(district, district.draftSites[0]!, pump)!, pump)
}

describe('the time to prime', () => {
  // Limits: 30 s to 1,250 gpm, 45 s from 1,500 (test-service page citing NFPA, seen second hand).
  it('is held against the limit of the pump’s rating', () => {
    expect(primed({ rated_gpm: 1000 }).time.limit_s).toBe(30)
    expect(primed({ rated_gpm: 1500 }).time.limit_s).toBe(45)
  })

  it('gives the last priming time again at the lift and altitude it is taken to be made at', () => {
    const { time, primerFrom } = primed({ priming_s: 24 }, { 'district.altitude_ft': 0 })
    expect(primerFrom).toBe('measured-time')
    expect(time.expected_s).toBeCloseTo(24, 6)
  })

  it('grows with the lift, and halves with twice the primer', () => {
    expect(primed({ primer_gpm: 140 }, { 'district.draftSites.0.lift_ft': 16 }).time.expected_s).toBeGreaterThan(primed({ primer_gpm: 140 }).time.expected_s ?? Infinity)
    expect(primed({ primer_gpm: 280 }).time.expected_s).toBeCloseTo((primed({ primer_gpm: 140 }).time.expected_s ?? 0) / 2, 9)
  })

  it('does not exist where the primer cannot lift the water, and has no working then', () => {
    const { time, getWorking } = primed({ primer_gpm: 140, dryVacuum_inHg: 12 }, { 'district.draftSites.0.lift_ft': 15 })
    expect(time.expected_s).toBeUndefined()
    expect(time.issues.map(({ code }) => code)).toEqual(['primer-cannot-lift'])
    expect(getWorking()).toBeUndefined()
  })
})
