import type { DraftSite, Source } from '@/lib/plan'
import type { Landscape } from '../build-landscape'
import { ringArea } from '../geometry/polygon'
import { captain1, captain2, handbook, measured, waterOfficer } from './evidence'
import { place } from './places'

const SQUARE_FEET_PER_SQUARE_METRE = 1 / 0.3048 ** 2
const FEET_PER_METRE = 1 / 0.3048

/** Sources of the district; surfaces and levels are those of the map they lie on. */
export function demoSources({ water }: Landscape): Source[] {
  const area = (key: string) => {
    const found = water.find((one) => one.key === key)
    if (!found) throw new RangeError(`water is ${key}, must be on the map`)
    return { surface_sqft: Math.round((Math.abs(ringArea(found.outer)) * SQUARE_FEET_PER_SQUARE_METRE) / 100) * 100, surfaceElevation_ft: Math.round(found.surface_m * FEET_PER_METRE) }
  }
  const map = handbook('area on the map')
  return [
    {
      kind: 'lake', id: 'stonecrop-reservoir', name: 'Stonecrop Reservoir', point: place('reservoir'), ...area('reservoir'), deepest_ft: 41, usableDepth_ft: 6, seasonalDrop_ft: 3,
      droughtDrop_ft: 7, water_degF: 62, certifiedOn: '2024-11-08', testedOn: '2025-06-14',
      access: 'Boat launch ploughed all winter by agreement; ice to 14 in most Februaries.',
      evidence: {
        surface_sqft: map, surfaceElevation_ft: handbook('spillway level, dam record'), usableDepth_ft: measured(waterOfficer, '2025-06-14', 0.1),
        seasonalDrop_ft: measured(waterOfficer, '2025-09-30', 0.2), droughtDrop_ft: handbook('dam record, driest year'), water_degF: measured(captain1, '2025-06-14', 0.05),
      },
    },
    {
      kind: 'pond', id: 'mill-pond', name: 'Mill Pond', point: place('millPond'), ...area('millPond'), deepest_ft: 7, usableDepth_ft: 2.5, inflow_gpm: 900, testedOn: '2025-08-16',
      access: 'Mill Yard loop, paved, one way: in past the mill, out by Mill Street.',
      evidence: { surface_sqft: map, usableDepth_ft: measured(captain1, '2025-08-16', 0.15), inflow_gpm: measured(waterOfficer, '2025-08-16', 0.25) },
    },
    {
      kind: 'stream', id: 'ostrel-river', name: 'Ostrel River at Hickory Bend', point: place('river'), streamWidth_ft: 52, streamDepth_ft: 2.6, floatReach_ft: 100, float_s: 58,
      seasonalDrop_ft: 1.4, droughtDrop_ft: 2.2, testedOn: '2025-08-30', access: 'Pull-off at the north end of the Covered Bridge.',
      evidence: {
        streamWidth_ft: measured(waterOfficer, '2025-08-30', 0.1), streamDepth_ft: measured(waterOfficer, '2025-08-30', 0.15), float_s: measured(waterOfficer, '2025-08-30', 0.1),
        seasonalDrop_ft: measured(waterOfficer, '2025-08-30', 0.2),
      },
    },
    {
      kind: 'stream', id: 'ostrel-river-iron', name: 'Ostrel River at the Iron Bridge', point: place('riverIron'), streamWidth_ft: 58, streamDepth_ft: 3, floatReach_ft: 100, float_s: 64,
      seasonalDrop_ft: 1.2, access: 'Grass landing, soft from November to April.',
      evidence: { streamWidth_ft: measured(waterOfficer, '2025-08-30', 0.1), streamDepth_ft: measured(waterOfficer, '2025-08-30', 0.15), float_s: measured(waterOfficer, '2025-08-30', 0.1) },
    },
    {
      kind: 'pond', id: 'applegarth-pond', name: 'Applegarth Pond', point: place('applegarthPond'), ...area('applegarthPond'), usableDepth_ft: 3, seasonalDrop_ft: 1.5,
      access: 'Farm loop by agreement with the farmer; gate open in summer.',
      evidence: { surface_sqft: map, usableDepth_ft: measured(captain1, '2025-05-03', 0.25) },
    },
    {
      kind: 'dryHydrant', id: 'coopers-pond', name: 'Cooper’s Pond dry hydrant', point: place('coopersPond'), ...area('cooperPond'), usableDepth_ft: 2, inflow_gpm: 1100,
      testedOn: '2025-10-11', inspectionDue: '2026-10-11', access: 'End of Cooper’s Row, room for one pumper; tenders fill in the road.',
      evidence: { surface_sqft: map, usableDepth_ft: measured(captain2, '2025-10-11', 0.2), inflow_gpm: measured(captain2, '2025-10-11', 0.3) },
    },
    {
      kind: 'cistern', id: 'meetinghouse-cistern', name: 'Meetinghouse cistern', point: place('cistern'), usable_gal: 28_500, testedOn: '2025-04-26', inspectionDue: '2026-04-26',
      access: 'Under the meetinghouse green; 6 in suction head at the kerb.',
      evidence: { usable_gal: measured(captain2, '2025-04-26', 0.03) },
    },
    {
      kind: 'pond', id: 'kettle-pond', name: 'Kettle Pond', point: place('kettle'), ...area('pond7'), deepest_ft: 16,
      access: 'Grass track from Kettle Road; light apparatus only.',
      evidence: { surface_sqft: map },
    },
    {
      kind: 'stream', id: 'fiddlers-brook', name: 'Fiddler’s Brook at Ford Lane', point: place('fiddlers'), streamWidth_ft: 14, streamDepth_ft: 0.9, floatReach_ft: 50, float_s: 31,
      access: 'Beside the ford. Summer flow only: no good after three dry weeks.',
      evidence: { float_s: measured(captain2, '2025-07-12', 0.2), streamWidth_ft: measured(captain2, '2025-07-12', 0.1), streamDepth_ft: measured(captain2, '2025-07-12', 0.25) },
    },
    {
      kind: 'pressureHydrant', id: 'village-hydrants', name: 'Ostrel Mills hydrants, Main Street', point: place('hydrants'), static_psi: 58, residual_psi: 31, test_gpm: 440, testedOn: '2025-05-17',
      access: 'One 4 in main under Main Street; the upper streets are weaker still.',
      evidence: { static_psi: measured(captain1, '2025-05-17', 0.03), residual_psi: measured(captain1, '2025-05-17', 0.05), test_gpm: measured(captain1, '2025-05-17', 0.08) },
    },
  ]
}

/** Bank spots where a pumper can stand. */
export function demoDraftSites(): DraftSite[] {
  return [
    {
      id: 'draft-boat-launch', name: 'Boat launch', sourceId: 'stonecrop-reservoir', point: place('boatLaunch'), lift_ft: 6.5, waterDepth_ft: 5.5, strainerCover_ft: 3, hoseRun_ft: 20, ground: 'gravel',
      turnRound: 'One-way loop, any tender.',
      evidence: { lift_ft: measured(captain1, '2025-06-14', 0.05), waterDepth_ft: measured(captain1, '2025-06-14', 0.1), hoseRun_ft: measured(captain1, '2025-06-14') },
    },
    {
      id: 'draft-dam', name: 'Dam, by the spillway', sourceId: 'stonecrop-reservoir', point: place('damSpillway'), lift_ft: 13.5, waterDepth_ft: 12, hoseRun_ft: 30, ground: 'gravel',
      turnRound: 'None: back out to Stonecrop Road with a spotter.',
      evidence: { lift_ft: measured(captain1, '2025-06-14', 0.05), hoseRun_ft: measured(captain1, '2025-06-14') },
    },
    {
      id: 'draft-mill-yard', name: 'Mill Yard', sourceId: 'mill-pond', point: place('millYard'), lift_ft: 5, waterDepth_ft: 4, strainerCover_ft: 2.2, hoseRun_ft: 20, ground: 'paved',
      turnRound: 'One-way loop, any tender.',
      evidence: { lift_ft: measured(captain1, '2025-08-16', 0.05), waterDepth_ft: measured(captain1, '2025-08-16', 0.1) },
    },
    {
      id: 'draft-covered-bridge', name: 'Covered Bridge, north abutment', sourceId: 'ostrel-river', point: place('coveredBridge'), lift_ft: 18.5, waterDepth_ft: 3, hoseRun_ft: 30, ground: 'gravel',
      turnRound: 'Back in from Covered Bridge Road; one tender at a time.',
      notes: 'The pull-off stands on the old abutment, high above the water.',
      evidence: { lift_ft: measured(waterOfficer, '2025-08-30', 0.04), waterDepth_ft: measured(waterOfficer, '2025-08-30', 0.15), hoseRun_ft: measured(waterOfficer, '2025-08-30') },
    },
    {
      id: 'draft-iron-bridge', name: 'Iron Bridge landing', sourceId: 'ostrel-river-iron', point: place('ironBridge'), lift_ft: 9.5, waterDepth_ft: 3.2, hoseRun_ft: 20, ground: 'soft',
      turnRound: 'Grass; one pumper only, tenders fill on South River Road.',
      evidence: { lift_ft: measured(waterOfficer, '2025-08-30', 0.08) },
    },
    {
      id: 'draft-applegarth', name: 'Applegarth loop', sourceId: 'applegarth-pond', point: place('applegarth'), lift_ft: 7, waterDepth_ft: 4.5, hoseRun_ft: 20, ground: 'firmGrass', turnRound: 'One-way farm loop.',
      evidence: { lift_ft: measured(captain1, '2025-05-03', 0.1) },
    },
    {
      id: 'draft-coopers', name: 'Cooper’s Pond dry hydrant', sourceId: 'coopers-pond', point: place('coopers'), lift_ft: 8, ground: 'paved', dryHydrant: { pipe_in: 6, pipe_ft: 46, elbow90Count: 1, elbow45Count: 2 },
      hoseRun_ft: 10, turnRound: 'Tenders come in by Cooper’s Row and back into the last drive.',
      evidence: { lift_ft: measured(captain2, '2025-10-11', 0.05) },
    },
    {
      id: 'draft-cistern', name: 'Meetinghouse suction head', sourceId: 'meetinghouse-cistern', point: place('cistern'), lift_ft: 11, hoseRun_ft: 10, ground: 'paved',
      evidence: { lift_ft: measured(captain2, '2025-04-26', 0.05) },
    },
    { id: 'draft-kettle', name: 'Kettle Pond bank', sourceId: 'kettle-pond', point: place('kettlePond'), hoseRun_ft: 20, ground: 'soft', notes: 'Never measured.' },
  ]
}
