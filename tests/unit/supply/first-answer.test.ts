import { describe, expect, it } from 'vitest'
import { evaluatePlan, missingForTime } from '@/lib/supply'
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

  it('asks for the first-due engine and the needed flow, without which the gap is not known', () => {
    const result = evaluatePlan(first(), { quick: true })
    expect(result.issues.filter(({ severity }) => severity === 'warn').map(({ code }) => code)).toEqual(expect.arrayContaining(['first-due-missing', 'demand-missing']))
    expect(result).toMatchObject({ gap_s: null, tankEmpty_s: null, firstWater_s: null, short_s: null })
    expect(result.supplyReady_s).toBeGreaterThan(0)
    expect(missingForTime('gap_s', result)).toEqual(['firstDue', 'need'])
    expect(missingForTime('firstWater_s', result)).toEqual(['need'])
    expect(missingForTime('short_s', result)).toEqual(['need'])
  })

  it('never takes a gap for none while the first-due engine, its tank or its way is missing', () => {
    const missing = (changes: Readonly<Record<string, unknown>>) => {
      const result = evaluatePlan(smallBundle(changes), { quick: true })
      expect(result).toMatchObject({ gap_s: null, tankEmpty_s: null })
      return missingForTime('gap_s', result)
    }
    expect(missing({ 'plan.firstDueId': undefined })).toEqual(['firstDue'])
    expect(missing({ 'district.apparatus.1.tank_gal': undefined })).toEqual(['firstDueTank'])
    expect(missing({ 'plan.hazardId': undefined, 'plan.demand': [{ id: 's1', from_s: 0, flow_gpm: 250 }] })).toEqual(['firstDueWay'])
    expect(missingForTime('gap_s', evaluatePlan(smallBundle(), { quick: true }))).toEqual([])
    expect(evaluatePlan(smallBundle({ 'district.apparatus.1.tank_gal': 20_000 }), { quick: true })).toMatchObject({ gap_s: 0, tankEmpty_s: null })
  })

  it('never counts an assumed tank beside one that is named, or a nurse tender', () => {
    expect(evaluatePlan(smallBundle(), { quick: true }).issues.map(({ code }) => code)).not.toContain('dump-tank-assumed')
    expect(evaluatePlan(smallBundle({ 'plan.dumpSites.0.portableTankIds': undefined, 'plan.dumpSites.0.tankCapacity_gal': 2500 }), { quick: true }).issues.map(({ code }) => code)).not.toContain('dump-tank-assumed')
  })
})
