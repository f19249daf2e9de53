import type { Apparatus } from '@/lib/plan'
import { captain1, captain2, handbook, measured, nominal, scales } from './evidence'

const list = handbook('mutual aid list, 2024')

/** Six tenders, 1,000 to 3,500 gallons: some timed over a dump, some known only by their plate. */
export const tenders: readonly Apparatus[] = [
  {
    kind: 'tender', id: 'tender-11', name: 'Tender 11', stationId: 'station-1', tank_gal: 3000, full_lb: 58_600, empty_lb: 33_400, height_ft: 10.8, width_ft: 8.5, crewCount: 3,
    usableShare: 0.94, dump_gpm: 1450, dumpTail_gpm: 620, fillLimit_gpm: 1000, fillInlet_in: 4, dumpPosition_s: 55, dumpClear_s: 25, fillPosition_s: 45, fillClear_s: 25,
    notes: 'Square 10 in dump, rear and both sides. Too high for the Depot Street underpass, too heavy for the Covered Bridge even empty.',
    evidence: {
      tank_gal: nominal, full_lb: measured(scales, '2025-03-05'), empty_lb: measured(scales, '2025-03-05'), height_ft: measured(captain1, '2025-03-05'),
      usableShare: measured(captain1, '2025-08-16', 0.02), dump_gpm: measured(captain1, '2025-08-16', 0.08), dumpTail_gpm: measured(captain1, '2025-08-16', 0.15),
      dumpPosition_s: measured(captain1, '2025-08-16', 0.3), fillPosition_s: measured(captain1, '2025-08-16', 0.3), fillLimit_gpm: handbook('tank plate: 1,000 gpm, 100 psi'),
    },
  },
  {
    kind: 'tender', id: 'tender-12', name: 'Tender 12', stationId: 'station-1', tank_gal: 1800, full_lb: 38_600, empty_lb: 23_500, height_ft: 9.7, width_ft: 8.2, crewCount: 3,
    dump_gpm: 980, fillInlet_in: 2.5, pump_gpm: 500,
    evidence: { tank_gal: nominal, full_lb: measured(scales, '2025-03-05'), empty_lb: measured(scales, '2025-03-05'), dump_gpm: measured(captain1, '2025-08-16', 0.1), height_ft: measured(captain1, '2025-03-05') },
  },
  {
    kind: 'tender', id: 'tender-21', name: 'Tender 21', stationId: 'station-2', tank_gal: 2000, full_lb: 41_900, empty_lb: 25_200, height_ft: 10.1, width_ft: 8.3, crewCount: 2,
    dump_gpm: 1120, dumpPosition_s: 70, dumpClear_s: 30, fillPosition_s: 60,
    evidence: {
      tank_gal: nominal, full_lb: measured(scales, '2025-03-06'), empty_lb: measured(scales, '2025-03-06'), dump_gpm: measured(captain2, '2026-04-18', 0.08),
      dumpPosition_s: measured(captain2, '2026-04-18', 0.3), fillPosition_s: measured(captain2, '2026-04-18', 0.3),
    },
  },
  {
    kind: 'tender', id: 'tender-22', name: 'Tender 22', stationId: 'station-2', tank_gal: 1000, full_lb: 28_900, empty_lb: 20_500, height_ft: 9.2, width_ft: 8, crewCount: 2,
    notes: 'Single rear axle; the one tender that may cross the Covered Bridge loaded.',
    evidence: { tank_gal: nominal, full_lb: measured(scales, '2025-03-06'), empty_lb: measured(scales, '2025-03-06') },
  },
  {
    kind: 'tender', id: 'tender-71', name: 'Tender 71', stationId: 'station-7', mutualAid: true, tank_gal: 3500, full_lb: 66_800, empty_lb: 37_500, height_ft: 11.2, width_ft: 8.5,
    dump_gpm: 1600, fillInlet_in: 4,
    notes: 'Mutual aid. Three axles behind; turns only where there is room.',
    evidence: { tank_gal: list, full_lb: list, empty_lb: list, height_ft: list, dump_gpm: measured('Capt., Station 7', '2025-09-27', 0.1) },
  },
  {
    kind: 'tender', id: 'tender-72', name: 'Tender 72', stationId: 'station-7', mutualAid: true, tank_gal: 2500, full_lb: 50_400, empty_lb: 29_600, height_ft: 10.3, width_ft: 8.4,
    notes: 'Mutual aid.',
    evidence: { tank_gal: list, full_lb: list, empty_lb: list, height_ft: list },
  },
]
