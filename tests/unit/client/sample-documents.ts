import type { District, Plan } from '@/lib/plan'

export const sampleDistrict = (): District => ({
  id: 'D', name: 'Alder Hollow', stations: [], draftSites: [], hazards: [], roadNotes: [], apparatus: [], equipment: [],
  sources: [{ id: 'S1', name: 'Mill pond', kind: 'pond', point: { lat: 50, lon: 11 } }],
})

export const samplePlan = (): Plan => ({
  id: 'P', name: 'Barn', districtId: 'D', dumpSites: [], tenders: [], legNotes: [],
  fillSites: [
    { id: 'F1', name: 'Mill pond', point: { lat: 50, lon: 11 }, lift_ft: 10 },
    { id: 'F2', name: 'Bridge', point: { lat: 50.1, lon: 11 } },
  ],
})
