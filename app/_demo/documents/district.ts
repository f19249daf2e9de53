import type { District } from '@/lib/plan'
import type { Landscape } from '../build-landscape'
import { demoBounds } from '../frame'
import { equipment } from './equipment'
import { handbook, measured, waterOfficer } from './evidence'
import { hazards, roadNotes, stations } from './hazards'
import { pumpers } from './pumpers'
import { demoDraftSites, demoSources } from './sources'
import { tenders } from './tenders'

/** The demo district without its road data, which the import adds. */
export function demoDistrict(land: Landscape): District {
  return {
    format: 'millrace-district', version: 1, id: 'ostrel-valley', name: 'Ostrel Valley (invented)',
    notes: 'An invented district for trying the program out. No place, department or person in it is real; on the globe it lies in the open Atlantic.',
    units: 'us', bounds: demoBounds(), altitude_ft: 700, water_degF: 62,
    evidence: { altitude_ft: handbook('contour on the map'), water_degF: measured(waterOfficer, '2025-06-14', 0.1) },
    stations: [...stations], sources: demoSources(land), draftSites: demoDraftSites(), hazards: [...hazards], roadNotes: [...roadNotes],
    apparatus: [...pumpers, ...tenders], equipment: [...equipment],
  }
}
