import { describe, expect, it } from 'vitest'
import type { Pumper } from '@/lib/plan'
import { backUpCard } from '@/lib/priming'
import { backUpInputs, findDraftSheet, type SheetTrial } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const cardOf = (known: Partial<Pumper>, water_gal?: number) => {
  const { district } = smallBundle()
  const pump = { ...district.apparatus[0], ...known } as Pumper
  const sheet = findDraftSheet(district, district.draftSites[0]!, pump)!
  const { rig, site, openDischarge_gpm, inputs } = backUpInputs(pump, sheet, water_gal)
  return { card: backUpCard(rig, site, openDischarge_gpm), inputs, rig, site }
}

// Common practice (equipment maker's training article, seen): a 2 in fill line is gated back, 1.5 in and smaller may stand open.
describe('a pumper with a usual 500 gpm tank-to-pump supply', () => {
  it.each([[1000, undefined], [1000, 250]])('gates a 2 in fill line at 150 psi, tank %s gal with %s left', (tank_gal, water_gal) => {
    const { card } = cardOf({ tank_gal, tankFill_in: 2 }, water_gal)
    expect(card.window.verdict).toBe('gate-tank-fill')
    expect(card.window.gate?.openShare).toBeLessThan(1)
  })

  it.each([[undefined], [250]])('never gates a 1.5 in fill line, with %s gal left', (water_gal) => {
    const { card } = cardOf({ tank_gal: 1000, tankFill_in: 1.5 }, water_gal)
    expect(card.window.verdict).not.toBe('gate-tank-fill')
    expect(card.window.vacuum_ft).toBeLessThan(card.window.top_ft)
  })
})

describe('what the card stands on', () => {
  it('uses a measured line as it was measured, and says so', () => {
    const { rig, inputs } = cardOf({ tankToPump_gpm: 600, tankToPumpDrop_ft: 16, tankFill_gpm: 300, evidence: { tankToPump_gpm: { mark: 'measured', spreadShare: 0.05 }, tankFill_gpm: { mark: 'measured' } } })
    expect(rig.tankToPump_gpmPerSqrtFt).toBeCloseTo(150, 9)
    expect(rig.tankFill_gpmPerSqrtPsi * Math.sqrt(145)).toBeCloseTo(300, 6)
    expect(inputs.find(({ symbol }) => symbol === 'tankToPumpCoefficient')).toMatchObject({ mark: 'measured', low: 142.5, high: 157.5 })
  })

  it('lists every assumed number: the lift nobody measured, what the season adds, air, water, hose, and our own judgement', () => {
    const { district } = smallBundle({ 'district.draftSites.0.lift_ft': undefined, 'district.altitude_ft': undefined, 'district.sources.0.seasonalDrop_ft': 1.5 })
    const pump = district.apparatus[0] as Pumper
    const marks = new Map(backUpInputs(pump, findDraftSheet(district, district.draftSites[0]!, pump)!).inputs.map((input) => [input.symbol, input]))
    expect(marks.get('lift_ft')).toMatchObject({ value: 10, mark: 'handbook', low: 5, high: 15 })
    expect(marks.get('seasonalDrop_ft')).toMatchObject({ value: 1.5, mark: 'assumed' })
    expect(marks.get('altitude_ft')).toMatchObject({ value: 1000, mark: 'assumed' })
    for (const symbol of ['water_degF', 'suction_in', 'suction_ft', 'tankBottom_ft', 'spare_ft', 'fillBack_psi', 'carriedAirShare']) expect(marks.has(symbol), symbol).toBe(true)
  })

  it('says that a lift is measured where it is, and that one tried on the sheet is not', () => {
    const { district } = smallBundle({ 'district.draftSites.0.evidence': { lift_ft: { mark: 'measured' } } })
    const pump = district.apparatus[0] as Pumper
    const lift = (trial: SheetTrial) => backUpInputs(pump, findDraftSheet(district, district.draftSites[0]!, pump, trial)!).inputs.find(({ symbol }) => symbol === 'lift_ft')
    expect(lift({})).toMatchObject({ value: 10, mark: 'measured' })
    expect(lift({ lift_ft: 14 })).toMatchObject({ value: 14, mark: 'assumed' })
    expect(lift({ lift_ft: 14, liftEvidence: { mark: 'measured' } })).toMatchObject({ value: 14, mark: 'measured' })
  })

  it('has every number inside its own range', () => {
    for (const { low, value, high } of cardOf({}).inputs) {
      expect(low).toBeLessThanOrEqual(value)
      expect(value).toBeLessThanOrEqual(high)
    }
  })

  it('has no vacuum above what the air leaves, and a lift that falls with altitude', () => {
    const low = cardOf({ tankFill_in: 2 })
    expect(low.card.window.top_ft).toBeCloseTo(low.site.atmosphere_ft - low.site.cavitation_ft, 9)
    const { district } = smallBundle({ 'district.altitude_ft': 6000 })
    const pump = { ...district.apparatus[0], tankFill_in: 2 } as Pumper
    const high = backUpInputs(pump, findDraftSheet(district, district.draftSites[0]!, pump)!)
    expect(backUpCard(high.rig, high.site, 500).window.highestLiftGated_ft).toBeLessThan(low.card.window.highestLiftGated_ft)
  })
})
