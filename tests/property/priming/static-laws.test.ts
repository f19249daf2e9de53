import fc from 'fast-check'
import { expect, test } from 'vitest'
import { backUpBudget, backUpPrimeWindow, loopVacuum_ft, primeTime, type BackUpRig, type BackUpSite } from '../../../lib/priming'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const rigs: fc.Arbitrary<BackUpRig> = fc.record({
  tank_gal: fc.constant(1000), tankWater_gal: between(200, 1000), tankBottom_ft: between(0, 1), tankTop_ft: between(3, 7),
  tankToPump_gpmPerSqrtFt: between(70, 180), tankFill_gpmPerSqrtPsi: between(8, 70),
  curve: fc.constant([{ flow_gpm: 625, pressure_psi: 250 }, { flow_gpm: 1250, pressure_psi: 150 }]), hose_gal: between(10, 40), pump_gal: between(8, 16),
})
const sites: fc.Arbitrary<BackUpSite> = fc.record({ lift_ft: between(0, 24), atmosphere_ft: between(26, 33.9), cavitation_ft: between(5, 9) })
const rank = { 'works-open': 1, 'gate-tank-fill': 1, 'gate-tank-to-pump': 1, 'lift-out-of-reach': 0 } as const

test('the gated valve puts the vacuum inside the window, and is never opened past full', () => {
  fc.assert(fc.property(rigs, sites, (rig, site) => {
    const window = backUpPrimeWindow(rig, site)
    const { gate } = window
    if (!gate) return
    expect(gate.openShare).toBeGreaterThan(0)
    expect(gate.openShare).toBeLessThanOrEqual(1)
    const vacuum_ft = gate.valve === 'tank-to-pump'
      ? loopVacuum_ft(window.flow_gpm, rig.tankToPump_gpmPerSqrtFt, gate.openShare, window.tankHeight_ft)
      : loopVacuum_ft(window.flow_gpm * gate.openShare, rig.tankToPump_gpmPerSqrtFt, 1, window.tankHeight_ft)
    expect(vacuum_ft).toBeCloseTo(gate.vacuum_ft, 6)
    expect(vacuum_ft).toBeGreaterThanOrEqual(window.bottom_ft - 1e-9)
    expect(vacuum_ft).toBeLessThanOrEqual(window.top_ft + 1e-9)
  }))
})

test('more lift, altitude or warmth never turns a no into a yes', () => {
  fc.assert(fc.property(rigs, sites, between(0, 5), (rig, site, more) => {
    const before = rank[backUpPrimeWindow(rig, site).verdict]
    for (const worse of [{ ...site, lift_ft: site.lift_ft + more }, { ...site, atmosphere_ft: site.atmosphere_ft - more }, { ...site, cavitation_ft: site.cavitation_ft + more }]) {
      expect(rank[backUpPrimeWindow(rig, worse).verdict]).toBeLessThanOrEqual(before)
    }
  }))
})

test('a lift at the highest that can be primed is in reach, a foot more is not', () => {
  fc.assert(fc.property(rigs, sites, (rig, site) => {
    const { highestLiftGated_ft } = backUpPrimeWindow(rig, site)
    fc.pre(highestLiftGated_ft > 0.1)
    expect(backUpPrimeWindow(rig, { ...site, lift_ft: highestLiftGated_ft - 1e-6 }).verdict).not.toBe('lift-out-of-reach')
    expect(backUpPrimeWindow(rig, { ...site, lift_ft: highestLiftGated_ft + 1 }).verdict).toBe('lift-out-of-reach')
  }))
})

test('careful hands never prime sooner than bold ones, and giving up comes after both', () => {
  fc.assert(fc.property(rigs, sites, (rig, site) => {
    const { primeSlow_s, primeQuick_s, giveUp_s } = backUpBudget(rig, site, backUpPrimeWindow(rig, site), 150)
    if (primeSlow_s === undefined || primeQuick_s === undefined || giveUp_s === undefined) return
    expect(primeQuick_s).toBeLessThan(primeSlow_s)
    expect(giveUp_s).toBeGreaterThan(primeSlow_s)
  }))
})

test('priming time never falls as lift, hose or pump grows, nor rises with the primer', () => {
  const asks = fc.record({ hose_gal: between(5, 40), pump_gal: between(5, 20), lift_ft: between(0, 20), atmosphere_ft: between(26, 33.9), rated_gpm: fc.constant(1000),
    primer: fc.record({ capacity_gpm: between(30, 200), stall_ft: between(24, 28) }) })
  fc.assert(fc.property(asks, between(0.01, 4), (ask, more) => {
    const base = primeTime(ask).expected_s ?? NaN
    const slack = 1e-9 * base
    expect(primeTime({ ...ask, lift_ft: Math.min(23, ask.lift_ft + more) }).expected_s).toBeGreaterThanOrEqual(base - slack)
    expect(primeTime({ ...ask, hose_gal: ask.hose_gal + more }).expected_s).toBeGreaterThanOrEqual(base - slack)
    expect(primeTime({ ...ask, pump_gal: ask.pump_gal + more }).expected_s).toBeGreaterThanOrEqual(base - slack)
    expect(primeTime({ ...ask, primer: { ...ask.primer, capacity_gpm: ask.primer.capacity_gpm + more } }).expected_s).toBeLessThanOrEqual(base + slack)
  }))
})
