import type { Apparatus } from '@/lib/plan'
import { captain1, captain2, handbook, measured, nominal, pumpTester, rating, scales } from './evidence'

/** Five pumpers and two portable pumps: one well tested, most half known. */
export const pumpers: readonly Apparatus[] = [
  {
    kind: 'pumper', id: 'engine-11', name: 'Engine 11', stationId: 'station-1', rated_gpm: 1500, tank_gal: 750, full_lb: 42_600, empty_lb: 36_200,
    height_ft: 9.9, width_ft: 8.4, crewCount: 5, suction_in: 6, suction_ft: 20, dryVacuum_inHg: 24.2, dryVacuumAltitude_ft: 690, priming_s: 21, discharge_psi: 160,
    tankToPump_gpm: 720, tankFill_in: 2.5, tankFill_gpm: 640, tankHeight_ft: 3.8, supplyHose_in: 5, supplyHose_ft: 1000,
    testPoints: [
      { lift_ft: 8.5, flow_gpm: 1630, suction_in: 6, suction_ft: 20, suctionLineCount: 2, altitude_ft: 690, water_degF: 61, testedOn: '2025-06-14' },
      { lift_ft: 13, flow_gpm: 1190, suction_in: 6, suction_ft: 20, suctionLineCount: 1, altitude_ft: 690, water_degF: 61, testedOn: '2025-06-14' },
    ],
    notes: 'Drafts on two 6 in lines for rating. Annual test at the boat launch.',
    evidence: {
      rated_gpm: rating, tank_gal: nominal, full_lb: measured(scales, '2025-03-05'), empty_lb: measured(scales, '2025-03-05'), height_ft: measured(captain1, '2025-03-05'),
      dryVacuum_inHg: measured(pumpTester, '2025-06-14'), priming_s: measured(pumpTester, '2025-06-14', 0.1), tankToPump_gpm: measured(pumpTester, '2025-06-14', 0.05),
      tankFill_gpm: measured(captain1, '2025-09-20', 0.1), discharge_psi: handbook('standing order for fill lines'), suction_in: nominal, suction_ft: nominal,
    },
  },
  {
    kind: 'pumper', id: 'engine-12', name: 'Engine 12', stationId: 'station-1', rated_gpm: 1250, tank_gal: 1000, full_lb: 40_300, empty_lb: 31_900, height_ft: 10.1,
    width_ft: 8.3, crewCount: 4, suction_in: 6, suction_ft: 20, intakeLoss_ft: 9.5, priming_s: 34, tankToPump_gpm: 540, tankFill_in: 2, supplyHose_in: 4, supplyHose_ft: 800,
    notes: 'Carries its hard suction preconnected to the front intake. The front pipe has two elbows: its loss was measured, side against front.',
    evidence: {
      rated_gpm: rating, tank_gal: nominal, full_lb: measured(scales, '2025-03-05'), intakeLoss_ft: measured(pumpTester, '2025-06-14', 0.15), priming_s: measured(pumpTester, '2025-06-14', 0.1),
      tankToPump_gpm: measured(pumpTester, '2025-06-14', 0.05), suction_in: nominal, suction_ft: nominal,
    },
  },
  {
    kind: 'pumper', id: 'engine-21', name: 'Engine 21', stationId: 'station-2', rated_gpm: 1000, tank_gal: 1000, full_lb: 37_800, empty_lb: 29_400, height_ft: 9.6,
    width_ft: 8.2, crewCount: 3, suction_in: 6, suction_ft: 20, dryVacuum_inHg: 19.5, dryVacuumAltitude_ft: 800, priming_s: 58, tankToPump_gpm: 410,
    tankHeight_ft: 3.5, supplyHose_in: 4, supplyHose_ft: 600,
    notes: 'The old one, of 1988. The primer is weak: 58 s in the last test and 19.5 inHg dry. Look for air at the drain valves first.',
    evidence: {
      rated_gpm: rating, tank_gal: nominal, dryVacuum_inHg: measured(captain2, '2025-10-11', 0.03), priming_s: measured(captain2, '2025-10-11', 0.1),
      tankToPump_gpm: measured(captain2, '2025-10-11', 0.05), full_lb: measured(scales, '2024-05-02'), suction_in: nominal,
    },
  },
  {
    kind: 'pumper', id: 'engine-22', name: 'Engine 22', stationId: 'station-2', rated_gpm: 750, tank_gal: 500, full_lb: 23_800, empty_lb: 19_600, height_ft: 8.8, width_ft: 8,
    crewCount: 3, suction_in: 4.5, suction_ft: 20, supplyHose_in: 3, supplyHose_ft: 800,
    notes: 'Short wheelbase, four-wheel drive: reaches Kettle Pond and the brook.',
    evidence: { rated_gpm: rating, tank_gal: nominal, full_lb: nominal, suction_in: nominal },
  },
  {
    kind: 'pumper', id: 'engine-71', name: 'Engine 71', stationId: 'station-7', mutualAid: true, rated_gpm: 1250, tank_gal: 1000, full_lb: 41_000, height_ft: 10.2,
    suction_in: 6, suction_ft: 30,
    notes: 'Mutual aid. Its figures are from the other company’s list; nobody here has seen its test sheet.',
    evidence: { rated_gpm: rating, tank_gal: nominal, full_lb: handbook('mutual aid list, 2024') },
  },
  {
    kind: 'portablePump', id: 'pump-1', name: 'Trailer pump, Station 1', stationId: 'station-1', rated_gpm: 500, full_lb: 2600,
    evidence: { rated_gpm: nominal },
  },
  {
    kind: 'portablePump', id: 'pump-2', name: 'Two-person pump, Station 2', stationId: 'station-2', rated_gpm: 250, discharge_psi: 90,
    notes: 'Carried to the water by two; for topping a portable tank from a brook.',
    evidence: { rated_gpm: nominal, discharge_psi: nominal },
  },
]
