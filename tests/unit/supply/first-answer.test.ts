import { describe, expect, it } from 'vitest'
import { evaluatePlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

/** The issue's own words: a first answer needs four sites and two vehicles. Here nothing else is said. */
const first = () => smallBundle({
  'district.altitude_ft': undefined, 'district.water_degF': undefined, 'district.draftSites.0.lift_ft': undefined, 'district.equipment': [], 'district.hazards': [],
  'district.apparatus': [{ id: 'p1', name: 'Pumper 1', kind: 'pumper', rated_gpm: 1000 }, { id: 't1', name: 'Tender 1', kind: 'tender', tank_gal: 2000 }],
  'plan.hazardId': undefined, 'plan.firstDueId': undefined, 'plan.legNotes': [], 'plan.tenders': [{ id: 'k1', tenderId: 't1' }],
  'plan.dumpSites.0.portableTankIds': undefined, 'plan.dumpSites.0.pumperId': undefined, 'plan.fireGround': { lat: 45.001, lon: -40.05 },
})

describe('a first answer', () => {
  it('comes from four sites and two vehicles', () => {
    const { sustainable_gpm, supplyReady_s, issues } = evaluatePlan(first(), { quick: true })
    expect(issues.filter(({ severity }) => severity === 'block')).toEqual([])
    expect(sustainable_gpm).toBeGreaterThan(0)
    expect(supplyReady_s).toBeGreaterThan(0)
  })

  it('says loudly that the portable tank, the pumper at the dump site and the lift are assumed', () => {
    const { issues, unmeasured } = evaluatePlan(first(), { quick: true })
    const warned = issues.filter(({ severity }) => severity === 'warn').map(({ code }) => code)
    expect(warned).toEqual(expect.arrayContaining(['dump-tank-assumed', 'dump-pumper-assumed', 'lift-assumed']))
    expect(unmeasured).toContainEqual(expect.objectContaining({ itemId: 'du1', field: 'tankCapacity_gal', value: 2000, mark: 'assumed', isDefault: true }))
  })

  it('never counts an assumed tank beside one that is named, or a nurse tender', () => {
    expect(evaluatePlan(smallBundle(), { quick: true }).issues.map(({ code }) => code)).not.toContain('dump-tank-assumed')
    expect(evaluatePlan(smallBundle({ 'plan.dumpSites.0.portableTankIds': undefined, 'plan.dumpSites.0.tankCapacity_gal': 2500 }), { quick: true }).issues.map(({ code }) => code)).not.toContain('dump-tank-assumed')
  })
})
