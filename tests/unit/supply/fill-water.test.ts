import { describe, expect, test } from 'vitest'
import { answerLines } from '@/app/_text'
import { isAllWaterNamed } from '@/app/_plan/first-needs'
import { evaluatePlan } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

const codesOf = (changes: Readonly<Record<string, unknown>>) => evaluatePlan(smallBundle(changes)).issues.map(({ code }) => code)
const isNamed = (changes: Readonly<Record<string, unknown>> = {}) => { const { district, plan } = smallBundle(changes); return isAllWaterNamed(district, plan) }
const alertsOf = (changes: Readonly<Record<string, unknown>>) => answerLines(evaluatePlan(smallBundle(changes)), () => 'Mill pond fill', 'us').filter(({ look }) => look !== 'plain').map(({ text }) => text)

describe('a fill site whose water nobody has named', () => {
  const dry = { 'plan.fillSites.0.draftSiteId': undefined }

  test('is told in the headline, and not where a source or a lay stands for it', () => {
    expect(alertsOf(dry).some((text) => text.startsWith('No water is named at Mill pond fill'))).toBe(true)
    expect(codesOf({})).not.toContain('fill-water-unnamed')
    expect(codesOf({ ...dry, 'plan.fillSites.0.sourceId': 'so1' })).not.toContain('fill-water-unnamed')
  })

  test('is not ticked as done', () => {
    expect(isNamed(dry)).toBe(false)
    expect(isNamed()).toBe(true)
  })

  test('is ticked just where the headline does not tell of it: a lay to a site with a pumper of its own names nothing that it drafts', () => {
    const lay = { id: 'lay1', name: 'Lay', fromId: 'so1', toId: 'f1', points: [{ lat: 45.03, lon: -40 }, { lat: 45.02, lon: -40 }], pumperIds: [], stretches: [{ id: 's1', size_in: 5, lineCount: 1 }] }
    for (const changes of [{}, dry, { ...dry, 'plan.fillSites.0.sourceId': 'so1' }, { ...dry, 'plan.hoseLays': [lay] }, { ...dry, 'plan.hoseLays': [{ ...lay, isLeftOut: true }] }])
      expect(isNamed(changes), JSON.stringify(changes)).toBe(!codesOf(changes).includes('fill-water-unnamed'))
  })
})

describe('the prime that a plan counts on', () => {
  // Time limits of the rating standard: 30 s to 1,250 gpm (test-service page citing NFPA, seen second hand).
  test('one that takes longer than the rating allows is told', () => {
    const at = (lift_ft: number, primer_gpm: number) => evaluatePlan(smallBundle({ 'district.draftSites.0.lift_ft': lift_ft, 'district.apparatus.0.primer_gpm': primer_gpm, 'district.apparatus.0.dryVacuum_inHg': 22 })).issues.filter(({ code }) => code.startsWith('fill-prime'))
    expect(at(6, 200)).toEqual([])
    expect(at(20, 30)).toMatchObject([{ code: 'fill-prime-slow', severity: 'warn', subjectIds: ['f1', 'p1'], values: { limit_s: 30, primer: 'known' } }])
  })

  test('nothing of a prime at a hydrant', () => {
    expect(codesOf({ 'district.draftSites.0.lift_ft': 20, 'district.apparatus.0.primer_gpm': 30, 'district.sources.0.kind': 'pressureHydrant' }).filter((code) => code.startsWith('fill-prime'))).toEqual([])
  })
})
