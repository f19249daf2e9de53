import type { Apparatus } from '../plan'
import { crewDefaults } from '../supply'
import type { CandidateKind, Effort } from './candidate'

/**
 * People and time that a change takes at the site. All of it is assumed: common practice, no source.
 * What brings apparatus adds its crew, and its time is that of its arrival.
 */
export const assumedEffort: Readonly<Record<CandidateKind, Omit<Effort, 'apparatusCount'>>> = {
  otherDraftSite: { peopleCount: 3, time_s: 300 },
  secondFillSite: { peopleCount: 3, time_s: 300 },
  fillPumper: { peopleCount: 0, time_s: 0 },
  suctionLine: { peopleCount: 3, time_s: 240 },
  suctionSize: { peopleCount: 3, time_s: 240 },
  fillLineSize: { peopleCount: 2, time_s: 180 },
  fillLineCount: { peopleCount: 2, time_s: 180 },
  fillBay: { peopleCount: 3, time_s: 300 },
  bayOrder: { peopleCount: 1, time_s: 60 },
  otherRoad: { peopleCount: 2, time_s: 300 },
  tender: { peopleCount: 0, time_s: 0 },
  tenderWithTank: { peopleCount: 2, time_s: 180 },
  portableTank: { peopleCount: 2, time_s: 180 },
  dumpPosition: { peopleCount: 3, time_s: 120 },
  driveThrough: { peopleCount: 2, time_s: 300 },
  dumpPumper: { peopleCount: 0, time_s: 0 },
  swapPumpers: { peopleCount: 2, time_s: 300 },
}

/** People who come with a vehicle; where nobody has said, as many as staffing takes. */
export const crewOf = (unit: Apparatus): number => unit.crewCount ?? crewDefaults[unit.kind].value

/** Nothing is free: the least that any change is reckoned at, one person for one minute. */
const LEAST_WORK_S = 60

/**
 * Effort as one number, by which gains are compared.
 *
 *   work = people · time
 *
 * @returns person-seconds, at least 60
 */
export const workOf_s = ({ peopleCount, time_s }: Effort): number => Math.max(LEAST_WORK_S, peopleCount * time_s)
