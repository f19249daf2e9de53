import type { Plan } from '@/lib/plan'
import { captain1, measured } from './evidence'
import { place } from './places'

const DISTRICT = 'ostrel-valley'

/** Meets what it needs: low lift, two bays, a one-way loop, a short road. */
const ganderHill: Plan = {
  format: 'millrace-plan-document', version: 1, id: 'plan-gander-hill', name: 'Gander Hill farmhouse from the boat launch', districtId: DISTRICT, hazardId: 'gander-house', fireGround: place('ganderFront'), firstDueId: 'engine-12',
  notes: 'The plan drilled in August 2025. Tender 72 is asked for with the first alarm.',
  fillSites: [
    {
      id: 'fill-boat-launch', name: 'Boat launch', point: place('boatLaunch'), sourceId: 'stonecrop-reservoir', draftSiteId: 'draft-boat-launch', pumperId: 'engine-11',
      suction: { size_in: 6, length_ft: 20, lineCount: 2, strainer: 'barrel' }, fillLine: { size_in: 5, length_ft: 75 }, bayCount: 2, setUp_s: 290,
      evidence: { setUp_s: measured(captain1, '2025-08-16', 0.2) },
    },
  ],
  dumpSites: [
    {
      id: 'dump-gander-lane', name: 'Gander Lane', point: place('ganderYard'), portableTankIds: ['tank-11', 'tank-12'], pumperId: 'engine-12', positionCount: 2, manner: 'backIn', setUp_s: 110,
      evidence: { setUp_s: measured(captain1, '2025-08-16', 0.2) },
    },
  ],
  tenders: [
    { id: 'task-11', tenderId: 'tender-11' }, { id: 'task-12', tenderId: 'tender-12' }, { id: 'task-21', tenderId: 'tender-21' }, { id: 'task-22', tenderId: 'tender-22' },
    { id: 'task-72', tenderId: 'tender-72', delay_s: 120 },
  ],
  demand: [{ id: 'stage-line', from_s: 0, flow_gpm: 180 }, { id: 'stage-full', from_s: 900, flow_gpm: 500 }],
  legNotes: [
    {
      id: 'leg-loaded', fromId: 'fill-boat-launch', toId: 'dump-gander-lane', travel_s: 176, distance_mi: 1.1,
      evidence: { travel_s: measured(captain1, '2025-08-16', 0.12), distance_mi: measured(captain1, '2025-08-16', 0.03) },
    },
  ],
}

/** Falls short, for three honest reasons: the lift, the one bay, and the bridge that turns every loaded tender away. */
const yarrowBank: Plan = {
  format: 'millrace-plan-document', version: 1, id: 'plan-yarrow-bank', name: 'Yarrow Bank barn from the Covered Bridge', districtId: DISTRICT, hazardId: 'yarrow-bank', firstDueId: 'engine-12',
  notes: 'How it has always been done: the nearest water, by the shortest road. Only empty tenders can take that road.',
  fillSites: [
    {
      id: 'fill-covered-bridge', name: 'Covered Bridge, north abutment', point: place('coveredBridge'), sourceId: 'ostrel-river', draftSiteId: 'draft-covered-bridge', pumperId: 'engine-21',
      suction: { size_in: 6, length_ft: 30, lineCount: 1, strainer: 'barrel' }, fillLine: { size_in: 4, length_ft: 100 }, bayCount: 1,
    },
  ],
  dumpSites: [{ id: 'dump-yarrow-lane', name: 'Yarrow Bank Lane', point: place('yarrowYard'), portableTankIds: ['tank-12'], pumperId: 'engine-71', positionCount: 1, manner: 'backIn' }],
  tenders: [
    { id: 'task-12', tenderId: 'tender-12' }, { id: 'task-21', tenderId: 'tender-21' }, { id: 'task-22', tenderId: 'tender-22' }, { id: 'task-72', tenderId: 'tender-72' },
  ],
  legNotes: [],
}

/** Two fill sites: the cistern is near and soon empty; the pond lasts, through a dry hydrant. Half the tenders cannot pass under the railway. */
const school: Plan = {
  format: 'millrace-plan-document', version: 1, id: 'plan-school', name: 'Dunmarrow school from the cistern and Cooper’s Pond', districtId: DISTRICT, hazardId: 'village-school', fireGround: place('schoolFront'), firstDueId: 'engine-22',
  notes: 'Drawn up for the school’s fire drill. Not yet tried with water.',
  fillSites: [
    {
      id: 'fill-coopers', name: 'Cooper’s Pond dry hydrant', point: place('coopers'), sourceId: 'coopers-pond', draftSiteId: 'draft-coopers', pumperId: 'engine-11',
      suction: { size_in: 6, length_ft: 10, lineCount: 1 }, fillLine: { size_in: 5, length_ft: 50 }, bayCount: 2,
    },
    {
      id: 'fill-cistern', name: 'Meetinghouse cistern', point: place('cistern'), sourceId: 'meetinghouse-cistern', draftSiteId: 'draft-cistern', pumperId: 'engine-21',
      suction: { size_in: 6, length_ft: 10, lineCount: 1 }, fillLine: { size_in: 4, length_ft: 50 }, bayCount: 1,
    },
  ],
  dumpSites: [
    { id: 'dump-school', name: 'School Drive', point: place('schoolYard'), portableTankIds: ['tank-21', 'tank-12', 'tank-72'], pumperId: 'engine-12', positionCount: 2, manner: 'driveThrough' },
  ],
  tenders: [
    { id: 'task-21', tenderId: 'tender-21', fillSiteId: 'fill-coopers' }, { id: 'task-22', tenderId: 'tender-22', fillSiteId: 'fill-cistern' },
    { id: 'task-12', tenderId: 'tender-12', fillSiteId: 'fill-coopers' }, { id: 'task-11', tenderId: 'tender-11', fillSiteId: 'fill-coopers' },
    { id: 'task-72', tenderId: 'tender-72', fillSiteId: 'fill-cistern' }, { id: 'task-71', tenderId: 'tender-71', fillSiteId: 'fill-coopers' },
  ],
  legNotes: [],
}

export const plans: readonly Plan[] = [ganderHill, yarrowBank, school]
