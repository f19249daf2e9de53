import type { Hazard, RoadNote, Station } from '@/lib/plan'
import { captain1, captain2, handbook, measured } from './evidence'
import { place } from './places'

export const stations: readonly Station[] = [
  { id: 'station-1', name: 'Station 1, Ostrel Mills', point: place('station1'), turnout_s: 210, evidence: { turnout_s: measured('Chief, from the 2025 run reports', '2026-01-05', 0.3) } },
  { id: 'station-2', name: 'Station 2, Dunmarrow', point: place('station2'), turnout_s: 270, evidence: { turnout_s: measured('Chief, from the 2025 run reports', '2026-01-05', 0.3) } },
  { id: 'station-7', name: 'Station 7, Fallow Gap (mutual aid)', point: place('station7'), mutualAid: true },
]

const paced = (by: string, on: string) => ({ length_ft: measured(by, on, 0.05), width_ft: measured(by, on, 0.05), storeyHeight_ft: measured(by, on, 0.1) })

export const hazards: readonly Hazard[] = [
  {
    id: 'yarrow-bank', name: 'Yarrow Bank Dairy, main barn', point: place('yarrowBarn'), length_ft: 98, width_ft: 39, storeyHeight_ft: 11, storeyCount: 1, ridgeHeight_ft: 10, occupancyClass: 4,
    constructionType: 'III', exposureCount: 0, spacing_ft: 62, involvedShare: 0.5, neededBy: 'rural-standard',
    notes: 'Block walls, timber roof, hay over the stalls. Cows are led out by the north door.', evidence: paced(captain1, '2025-04-12'),
  },
  {
    id: 'village-school', name: 'Dunmarrow Village School', point: place('school'), length_ft: 144, width_ft: 62, storeyHeight_ft: 12, storeyCount: 1, ridgeHeight_ft: 8, occupancyClass: 7,
    constructionType: 'III', exposureCount: 0, neededBy: 'rural-standard', notes: 'Life hazard first: 64 pupils in term.', evidence: paced(captain2, '2025-08-20'),
  },
  {
    id: 'feed-mill', name: 'Ostrel Feed & Grain', point: place('feedMill'), length_ft: 105, width_ft: 59, storeyHeight_ft: 15, storeyCount: 2, ridgeHeight_ft: 8, occupancyClass: 3, constructionType: 'V',
    exposureCount: 3, spacing_ft: 28, involvedShare: 0.5, needed_gpm: 1000, neededBy: 'officer', notes: 'Dust: no straight stream into the bins.',
    evidence: { ...paced(captain1, '2025-11-02'), needed_gpm: handbook('chief’s order: what the village can hope to bring') },
  },
  {
    id: 'gander-house', name: 'Gander Hill farmhouse', point: place('ganderHouse'), length_ft: 43, width_ft: 30, storeyHeight_ft: 9, storeyCount: 2, ridgeHeight_ft: 9, occupancyClass: 7, constructionType: 'V',
    isDwelling: true, exposureCount: 2, spacing_ft: 34, involvedShare: 0.5, neededBy: 'rural-standard', notes: 'Barn to windward at 34 ft, machine shed at 45 ft.', evidence: paced(captain1, '2025-04-12'),
  },
  {
    id: 'sugarhouse', name: 'Sugarhouse Farm', point: place('sugarhouse'), length_ft: 60, width_ft: 36, storeyHeight_ft: 10, storeyCount: 1, ridgeHeight_ft: 12, occupancyClass: 4, constructionType: 'V',
    exposureCount: 1, spacing_ft: 55, neededBy: 'rural-standard', notes: 'Not surveyed since the new evaporator.',
  },
]

/** What the officers know of the roads that the map does not say. */
export const roadNotes: readonly RoadNote[] = [
  {
    id: 'note-cold-spring', name: 'Cold Spring bridge, 12 tons', point: place('coldSpringBridge'), maxWeight_lb: 24_000, notes: 'Posted by the county in April 2025; the map does not have it.',
    evidence: { maxWeight_lb: measured('Chief, read from the sign', '2025-04-22') },
  },
  { id: 'note-cross-hill', name: 'Cross Hill Road washed out', point: place('crossHill'), closed: true, notes: 'Shoulder gone above the culvert since the October storm; the town mends it in spring.' },
  {
    id: 'note-hollow-run', name: 'Hollow Run Road, loaded tenders', point: place('hollowRun'), speed_mph: 18, notes: 'Washboard gravel on the climb.',
    evidence: { speed_mph: measured(captain1, '2025-07-09', 0.15) },
  },
]
