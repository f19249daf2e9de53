import type { EvidenceMark } from '../evidence'
import type { Apparatus } from '../plan'

/**
 * Numbers taken where nobody has measured, each with how it is known. A plan with none of
 * its own numbers stands on these alone, so each says its source and how far it may be off.
 */
export type Default = { readonly value: number; readonly mark: EvidenceMark; readonly source: string; readonly spreadShare: number }

const handbook = (value: number, source: string, spreadShare: number): Default => ({ value, mark: 'handbook', source, spreadShare })
const assumed = (value: number, spreadShare: number, source = 'common practice, no source'): Default => ({ value, mark: 'assumed', source, spreadShare })

export const defaults = {
  altitude_ft: assumed(1000, 0.5, 'the altitude of the classical lift table (common figure, not checked against a published table)'),
  water_degF: handbook(60, 'pump rating conditions, NFPA 1901 (common figure, not checked against a published table)', 0.2),
  average_mph: handbook(35, 'water shuttle lesson plan: T = 0.65 + 1.7 D at 35 mph', 0.2),
  roadFactor: assumed(1.4, 0.25),
  turnout_s: assumed(180, 0.6),
  arrival_s: assumed(900, 0.6),
  firstLine_s: assumed(120, 0.5),
  duration_s: handbook(7200, 'steady supply: 250 gpm for 2 hours', 0),
  reserve_s: assumed(120, 0),

  usableShare: handbook(0.9, 'hauled-water form A: tank less 10 %', 0.07),
  tenderDump_gpm: handbook(1000, 'NFPA 1901: average 1,000 gpm over the first 90 % (common figure, not checked against a published table)', 0.3),
  tenderDumpTail_gpm: assumed(400, 0.5),
  tenderFillLimit_gpm: handbook(1000, 'NFPA 1903-1991: connection must take 1,000 gpm', 0.2),
  fillInlet_in: assumed(2.5, 0, 'an inlet that takes 1,000 gpm within 100 psi is about 2.5 in'),
  fillInletMaximum_psi: handbook(100, 'plastic tanks: 100 psi and 1,000 gpm (trade series)', 0.1),
  dumpPositionBackIn_s: assumed(75, 0.5),
  dumpPositionDriveThrough_s: assumed(40, 0.5),
  dumpClear_s: assumed(30, 0.5),
  fillPosition_s: assumed(60, 0.5),
  fillClear_s: assumed(30, 0.5),
  topUpShare: assumed(0.1, 0.3),
  topUpRateShare: assumed(0.5, 0.4),

  hookUpLine_s: assumed(20, 0.5),
  jetDump_gpm: assumed(1500, 0.3),
  pumpDump_gpm: handbook(500, 'tank to pump, tender with pump: 500 gpm (study page)', 0.2),
  dumpHead_ft: assumed(3.5, 0.2),
  nurseIntake_gpm: handbook(500, 'nursing suits less than 500 gpm (trade series)', 0.3),
  nurseOutlet_gpm: handbook(500, 'tank to pump, tender with pump: 500 gpm until 80 % of the tank is gone (study page)', 0.2),
  siphonTube_in: assumed(6, 0),
  siphonDrive_in: assumed(1.5, 0, 'a 1.5 in driving line (trade article)'),
  siphonDrive_psi: assumed(75, 0.3),
  siphonMost_gpm: handbook(500, 'about 500 gpm by a 6 in tube (driver/operator handbook; common figure, not checked against a published table)', 0.4),
  layFactor: assumed(1.05, 0.03, 'hose lies in bends; common practice, no source'),
  layCrewCount: assumed(4, 0.5),
  layOutlet_psi: assumed(20, 0, 'left where the hose ends, as into the intake of a pumper'),
  oneLane_s: assumed(60, 0.5),
  restAfter_s: assumed(4 * 3600, 0),
  rest_s: assumed(15 * 60, 0),
  fuel_s: assumed(12_000, 0.3, '15 gal an hour for a large pumper, 50 gal aboard; common practice, no source'),
  pumperCrewCount: assumed(4, 0),
  tenderCrewCount: assumed(2, 0),
  portablePumpCrewCount: assumed(2, 0),

  fillSetUp_s: assumed(300, 0.4),
  dumpSetUp_s: assumed(120, 0.5),
  pumpSetUp_s: assumed(240, 0.4),
  reprime_s: assumed(90, 0.35),
  suctionSize_in: handbook(6, 'NFPA 1901 suction table for 1,000 to 1,250 gpm (common figure, not checked against a published table)', 0),
  suctionLength_ft: handbook(20, 'pump rating: 20 ft of hard suction', 0),
  fillLineSize_in: assumed(4, 0),
  fillLineLength_ft: assumed(100, 0.3),
  discharge_psi: assumed(150, 0.1),
  portableTank_gal: assumed(2000, 0.25, 'the smallest portable tank in common use; common practice, no source'),
  portableTankHeight_in: assumed(29, 0.1),
  dumpPump_gpm: assumed(1000, 0.25),
  dumpLift_ft: assumed(4, 0.4),
  dumpDischarge_psi: assumed(150, 0.2),
  lift_ft: handbook(10, 'lift for pump rating', 0.5),
  intakeHeight_ft: assumed(2.5, 0.2),
} as const satisfies Record<string, Default>

/** People who come with a vehicle whose crew nobody has said, operator or driver among them. */
export const crewDefaults = {
  pumper: defaults.pumperCrewCount,
  tender: defaults.tenderCrewCount,
  portablePump: defaults.portablePumpCrewCount,
} as const satisfies Record<Apparatus['kind'], Default>
