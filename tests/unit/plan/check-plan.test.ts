import { describe, expect, it } from 'vitest'
import { checkPlan } from '@/lib/plan'
import { smallBundle } from '@/tests/fixtures/bundle'

const codes = (changes: Record<string, unknown>) =>
  checkPlan(smallBundle(changes)).map(({ code, severity, subjectIds }) => `${severity} ${code} ${subjectIds.join(',')}`)

describe('checks of a plan', () => {
  it('have nothing to say of a sound plan', () => {
    expect(checkPlan(smallBundle())).toEqual([])
  })

  it.each<[string, Record<string, unknown>, string]>([
    ['there is nowhere to fill', { 'plan.fillSites': [] }, 'block plan-without-fill-site pl1'],
    ['there is nowhere to dump', { 'plan.dumpSites': [] }, 'block plan-without-dump-site pl1'],
    ['no tender drives', { 'plan.tenders': [] }, 'block plan-without-tender pl1'],
    ['a tender has no tank', { 'district.apparatus.2.tank_gal': undefined }, 'block tender-without-tank t1'],
    ['a tender drives twice', { 'plan.tenders.1.tenderId': 't1' }, 'block tender-twice t1'],
    ['a pumper is sent hauling', { 'plan.tenders.0.tenderId': 'p1' }, 'block not-a-tender p1'],
    ['a tender is to draft', { 'plan.fillSites.0.pumperId': 't1' }, 'block fill-pumper-cannot-draft f1,t1'],
    ['a fill site has no pumper', { 'plan.fillSites.0.pumperId': undefined }, 'block fill-site-without-pumper f1'],
    ['a pumper has no rating', { 'district.apparatus.0.rated_gpm': undefined }, 'block pumper-without-rating p1'],
    ['a pumper stands in two places', { 'plan.dumpSites.0.pumperId': 'p1' }, 'block pumper-in-two-places p1,f1,du1'],
    ['a dump site is to have no tank', { 'plan.dumpSites.0.portableTankIds': [], 'plan.dumpSites.0.tankCapacity_gal': 0 }, 'block dump-site-without-tank du1'],
    ['an id names nothing', { 'plan.fillSites.0.draftSiteId': 'gone' }, 'block id-unresolved f1'],
    ['a tender weighs less full than empty', { 'district.apparatus.2.full_lb': 20000, 'district.apparatus.2.empty_lb': 30000 }, 'warn tender-lighter-full t1'],
  ])('speak when %s', (_, change, expected) => {
    expect(codes(change)).toContain(expected)
  })
})
