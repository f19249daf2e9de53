import { describe, expect, test } from 'vitest'
import { evaluatePlan, explain, isWorking } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

const resultOf = (changes: Readonly<Record<string, unknown>>) => {
  const result = evaluatePlan(smallBundle(changes), { quick: true })
  const site = result.sites.find(({ kind }) => kind === 'dumpSite')
  return { result, pump_gpm: site?.kind === 'dumpSite' ? site.pump_gpm : null, about: result.issues.filter(({ code }) => /^dump-(line|hose)/.test(code)) }
}

/** A fire so far from the dump site on a parallel: one degree of longitude at 45° N of a sphere of mean radius is 257,960 ft. */
const fireAt = (away_ft: number) => ({ 'plan.fireGround': { lat: 45, lon: -40.05 + away_ft / 257_960 } })
const hose = (size_in: number, length_ft: number) => ({ 'district.apparatus.1.supplyHose_in': size_in, 'district.apparatus.1.supplyHose_ft': length_ft })

describe('the hose from a dump site to the fire', () => {
  // By the friction form of the trade (C = 2 for 2.5 in hose, municipal training presentation, seen): 200 gpm lose 32 psi in 400 ft.
  test('what it passes is what the site sends on: 200 gpm for each √32 psi in 400 ft of 2.5 in', () => {
    const { pump_gpm } = resultOf({ 'plan.dumpSites.0.supplyLine': { size_in: 2.5, length_ft: 400 } })
    // 150 psi at the pump, 20 left for the fire.
    expect(pump_gpm).toBeCloseTo(200 * Math.sqrt(130 / 32), 3)
  })

  test('two lines pass twice as much, until the pump has no more', () => {
    const one = resultOf({ 'plan.dumpSites.0.supplyLine': { size_in: 2.5, length_ft: 1600 } })
    const two = resultOf({ 'plan.dumpSites.0.supplyLine': { size_in: 2.5, length_ft: 1600, lineCount: 2 } })
    expect(two.pump_gpm! / one.pump_gpm!).toBeCloseTo(2, 6)
    const wide = resultOf({ 'plan.dumpSites.0.supplyLine': { size_in: 5, length_ft: 100 } })
    // Rated 1,000 gpm at 150 psi net: through short, wide hose it works below that pressure and gives more.
    expect(wide.pump_gpm).toBeGreaterThanOrEqual(resultOf({}).pump_gpm!)
  })

  test('ground that rises to the fire takes 0.433 psi a foot of the pressure', () => {
    const flat = resultOf({ 'plan.dumpSites.0.supplyLine': { size_in: 2.5, length_ft: 400 } })
    const up = resultOf({ 'plan.dumpSites.0.supplyLine': { size_in: 2.5, length_ft: 400 }, 'plan.dumpSites.0.supplyLineRise_ft': 150 })
    expect((up.pump_gpm! / flat.pump_gpm!) ** 2).toBeCloseTo((130 - 0.433 * 150) / 130, 2)
  })

  test('one that passes less than is needed is told, and the answer is held to it', () => {
    const { result, about } = resultOf({ 'plan.dumpSites.0.supplyLine': { size_in: 1.5, length_ft: 600 } })
    expect(about).toMatchObject([{ code: 'dump-line-short', severity: 'warn', subjectIds: ['du1', 'p2'], values: { discharge_psi: 150, needed_gpm: 250 } }])
    expect(result.sustainable_gpm).toBeLessThanOrEqual(about[0]!.values['flow_gpm'] as number)
  })

  test('not said: nothing for a site beside the fire, a warning where a 2.5 in line would not do', () => {
    expect(resultOf({}).about).toEqual([])
    expect(resultOf(fireAt(200)).about).toEqual([])
    const [far] = resultOf(fireAt(2000)).about
    expect(far).toMatchObject({ code: 'dump-line-unsaid', severity: 'warn', values: { size_in: 2.5, needed_gpm: 250 } })
    expect(far!.values['away_ft']).toBeCloseTo(2100, 0)
    expect(far!.values['flow_gpm']).toBeCloseTo(200 * Math.sqrt((130 / 32) * (400 / 2100)), 0)
  })

  test('not said, and the pumper’s hose is known: a warning where it is too short or too thin, else nothing', () => {
    expect(resultOf({ ...fireAt(2000), ...hose(5, 3000) }).about).toEqual([])
    expect(resultOf({ ...fireAt(2000), ...hose(5, 1000) }).about).toMatchObject([{ code: 'dump-hose-short', severity: 'warn', values: { carried_ft: 1000 } }])
    expect(resultOf({ ...fireAt(2000), ...hose(2.5, 3000) }).about).toMatchObject([{ code: 'dump-hose-thin', severity: 'warn', values: { size_in: 2.5 } }])
  })

  test('the working of the flow names the hose', () => {
    const found = explain(smallBundle({ 'plan.dumpSites.0.supplyLine': { size_in: 3, length_ft: 500, lineCount: 2 } }), 'site/du1/pump_gpm')
    expect(found?.law).toBe('dump-line')
    const values = Object.fromEntries((found?.inputs ?? []).map(({ symbol, value }) => [symbol, value]))
    expect(values).toMatchObject({ supplyLineSize_in: 3, supplyLineLength_ft: 500, supplyLineCount: 2 })
    expect(found?.inputs.every(({ from }) => isWorking(from) || from.field !== '')).toBe(true)
  })

  // C = 1.28 for 2.5 in hose is what a line has that loses 12.8 psi in 1,000 ft at 100 gpm (FL = C · (Q/100)² · L/100, by hand).
  const tested = (coefficient?: number) => ({ id: 'ho1', name: 'Hose', kind: 'hose', size_in: 2.5, length_ft: 1000, ...(coefficient !== undefined && { coefficient, evidence: { coefficient: { mark: 'measured' } } }) })
  const listed = (...hoses: object[]) => ({ 'district.equipment': [{ id: 'e1', name: 'Portable tank', kind: 'portableTank', capacity_gal: 3000 }, ...hoses] })
  const line = { 'plan.dumpSites.0.supplyLine': { size_in: 2.5, length_ft: 1000 } }

  test('loses what the district’s own hose loses; a piece nobody has tested counts as the catalogue has it', () => {
    expect(resultOf({ ...line, ...listed(tested(1.28)) }).pump_gpm).toBeCloseTo(100 * Math.sqrt(130 / 12.8), 3)
    expect(resultOf({ ...line, ...listed(tested(1.28), { ...tested(), id: 'ho2' }) }).pump_gpm).toBeCloseTo(100 * Math.sqrt(130 / 20), 3)
    expect(resultOf({ ...line, ...listed(tested(2.5), { ...tested(), id: 'ho2' }) }).pump_gpm).toBeCloseTo(100 * Math.sqrt(130 / 25), 3)
    // Not said what lies there: the warning reckons with the same hose.
    const [far] = resultOf({ ...fireAt(2000), ...listed(tested(2.5)) }).about
    expect(far!.values['flow_gpm']).toBeCloseTo(100 * Math.sqrt(130 / (2.5 * 21)), 0)
  })

  test('the working has size, length and friction with the evidence each was given', () => {
    const evidence = { 'plan.dumpSites.0.evidence': { 'supplyLine.size_in': { mark: 'measured', by: 'Captain' }, 'supplyLine.length_ft': { mark: 'handbook' } } }
    const markOf = (changes: object) => Object.fromEntries((explain(smallBundle({ ...line, ...changes }), 'site/du1/pump_gpm')?.inputs ?? []).map(({ symbol, from }) => [symbol, isWorking(from) ? 'worked' : from.mark]))
    expect(markOf({ ...evidence, ...listed(tested(1.28)) })).toMatchObject({ supplyLineSize_in: 'measured', supplyLineLength_ft: 'handbook', coefficient: 'measured' })
    expect(markOf({})).toMatchObject({ supplyLineSize_in: 'assumed', supplyLineLength_ft: 'assumed', coefficient: 'handbook' })
  })

  test('a strainer that the pumper brings is the one that lies in the tank', () => {
    const strainer = (style: string) => ({ 'district.equipment': [{ id: 'e1', name: 'Portable tank', kind: 'portableTank', capacity_gal: 3000 }, { id: 's1', name: 'Strainer', kind: 'strainer', style, carriedBy: 'p2' }] })
    const low = resultOf(strainer('low-level')).pump_gpm!
    expect(low).toBe(resultOf({}).pump_gpm)
    expect(resultOf(strainer('barrel')).pump_gpm).toBeGreaterThanOrEqual(low)
  })
})
