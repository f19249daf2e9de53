import { describe, expect, it } from 'vitest'
import { ownNeeds, openNeeds, unitToEnter } from '@/app/_plan/own-needs'
import { smallBundle } from '../../fixtures/bundle'

const measured = { mark: 'measured' }
const known = { 'district.apparatus.0.evidence': { tank_gal: measured }, 'district.apparatus.1.evidence': { tank_gal: measured }, 'district.apparatus.2.evidence': { tank_gal: measured }, 'district.apparatus.3.evidence': { tank_gal: measured } }
const open = (changes: Readonly<Record<string, unknown>>) => {
  const { district, plan } = smallBundle(changes)
  return openNeeds(district, plan)
}

describe('what comes after a first answer', () => {
  it('is everything for a plan that was tapped together', () => {
    const tapped = {
      'plan.fillSites.0.draftSiteId': undefined, 'plan.dumpSites.0.pumperId': undefined, 'plan.dumpSites.0.portableTankIds': undefined,
      'district.apparatus.0.stationId': undefined,
    }
    expect(open(tapped)).toEqual(ownNeeds)
  })

  it('counts a lift only where somebody measured it, in the survey or in the plan', () => {
    expect(open(known)).toEqual(['lift', 'roads'])
    expect(open({ ...known, 'district.draftSites.0.evidence': { lift_ft: measured } })).toEqual(['roads'])
    expect(open({ ...known, 'plan.fillSites.0.lift_ft': 9, 'plan.fillSites.0.evidence': { lift_ft: measured } })).toEqual(['roads'])
    expect(open({ ...known, 'district.draftSites.0.evidence': { lift_ft: measured }, 'plan.fillSites.0.lift_ft': 9 })).toEqual(['lift', 'roads'])
  })

  it('leads to the first vehicle of the plan of which nothing is measured', () => {
    const { district, plan } = smallBundle({ ...known, 'district.apparatus.2.evidence': undefined })
    expect(openNeeds(district, plan)).toContain('vehicles')
    expect(unitToEnter(district, plan)?.name).toBe('Tender 1')
  })
})
