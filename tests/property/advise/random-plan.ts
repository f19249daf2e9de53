import fc from 'fast-check'
import { adviceBundle } from '../../fixtures/advice-bundle'
import type { Bundle } from '@/lib/plan'

/** Numbers of a small random plan: its tenders, the way between its sites, its bays, positions and tank. */
export const planNumbers = fc.record({
  tanks: fc.array(fc.integer({ min: 4, max: 35 }), { minLength: 2, maxLength: 6 }),
  delays_min: fc.array(fc.integer({ min: 0, max: 25 }), { minLength: 6, maxLength: 6 }),
  distance: fc.integer({ min: 3, max: 60 }),
  lift: fc.integer({ min: 4, max: 20 }),
  bayCount: fc.integer({ min: 1, max: 2 }),
  positionCount: fc.integer({ min: 1, max: 2 }),
  capacity: fc.integer({ min: 15, max: 40 }),
  planned: fc.integer({ min: 1, max: 3 }),
})
export type PlanNumbers = typeof planNumbers extends fc.Arbitrary<infer T> ? T : never

/** A plan of the small valley with those numbers. Tenders without a station arrive at a stated time, so each has its own delay. */
export function planOf({ tanks, delays_min, distance, lift, bayCount, positionCount, capacity, planned }: PlanNumbers): Bundle {
  return adviceBundle(({ district, plan }) => {
    const tenders = tanks.map((tank, index) => ({ id: `t${index}`, name: `Tender ${index}`, kind: 'tender', tank_gal: tank * 100, stationId: 'st1', turnout_s: delays_min[index]! * 60 }))
    district.apparatus = [...district.apparatus.filter(({ kind }) => kind !== 'tender'), ...tenders] as unknown as typeof district.apparatus
    district.equipment = district.equipment.filter((item) => !('carriedBy' in item) || !String(item.carriedBy).startsWith('t')).map((item) => (item.id === 'e1' ? { ...item, capacity_gal: capacity * 100 } : item)) as typeof district.equipment
    district.draftSites = district.draftSites.map((site) => (site.id === 'ds1' ? { ...site, lift_ft: lift } : site)) as typeof district.draftSites
    plan.legNotes = plan.legNotes.map((note) => (note.id === 'l1' ? { ...note, distance_mi: distance / 10 } : note))
    plan.tenders = tenders.slice(0, planned).map(({ id }, index) => ({ id: `k${index}`, tenderId: id }))
    plan.fillSites = plan.fillSites.map((site) => ({ ...site, bayCount }))
    plan.dumpSites = plan.dumpSites.map((site) => ({ ...site, positionCount }))
  })
}
