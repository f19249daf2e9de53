import { expect, test } from 'vitest'
import { evaluatePlan, explain, isWorking } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

const line = { 'plan.fillSites.0.fillLine': { size_in: 2.5, length_ft: 300 }, 'plan.fillSites.0.discharge_psi': 150 }
const hose = (coefficient: number) => ({
  'district.equipment': [{ id: 'e1', name: 'Portable tank', kind: 'portableTank', capacity_gal: 3000 }, { id: 'ho1', name: 'Hose', kind: 'hose', size_in: 2.5, length_ft: 600, coefficient, evidence: { coefficient: { mark: 'measured' } } }],
})
const fillOf = (changes: Readonly<Record<string, unknown>>) => {
  const site = evaluatePlan(smallBundle({ ...line, ...changes }), { quick: true }).sites.find(({ kind }) => kind === 'fillSite')
  if (site?.kind !== 'fillSite') throw new Error('the fill site is missing')
  return site
}

// FL = C · (Q/100)² · L/100, the form of the trade: all else alike, 150 psi = Q² · (C · 3/10,000 + the inlet’s part), by hand.
test('the line to a bay loses what the district’s own hose loses', () => {
  const [usual, worse] = [fillOf({}), fillOf(hose(4))]
  expect([usual.fillLimit, worse.fillLimit]).toEqual(['pressure', 'pressure'])
  // The handbook’s C of 2.5 in hose is 2 (municipal training presentation, seen).
  expect(150 * (1 / worse.bayRate_gpm[0]! ** 2 - 1 / usual.bayRate_gpm[0]! ** 2)).toBeCloseTo(((4 - 2) * 3) / 10_000, 9)
})

test('its working has size, length and friction with the evidence each was given', () => {
  const marks = (changes: object) => Object.fromEntries((explain(smallBundle({ ...line, ...changes }), 'site/f1/rate_gpm')?.inputs ?? []).map(({ symbol, from }) => [symbol, isWorking(from) ? 'worked' : from.mark]))
  expect(marks({ ...hose(4), 'plan.fillSites.0.evidence': { 'fillLine.size_in': { mark: 'measured' }, 'fillLine.length_ft': { mark: 'measured' } } })).toMatchObject({ fillLineSize_in: 'measured', fillLineLength_ft: 'measured', coefficient: 'measured' })
  expect(marks({ 'plan.fillSites.0.fillLine': undefined })).toMatchObject({ fillLineSize_in: 'assumed', fillLineLength_ft: 'assumed', coefficient: 'handbook' })
})
