import { roles, type Role } from '../plan'
import type { Session } from './session'
import { readFlows, sessionShortfall, type SessionFlows } from './session-record'
import type { Shortfall } from './shortfall'
import { viewOf, type ExerciseView, type FillView, type TankView, type TenderView } from './view'

/** Roles at a screen of their own; who leads sees the exercise itself. */
export const seatRoles = roles.filter((role) => role !== 'facilitator')
export type SeatRole = Exclude<Role, 'facilitator'>

/** `siteId`: the site of a dump or fill seat. */
export type Seat = { readonly role: SeatRole; readonly siteId?: string }

/** An exercise at its clock with what the fire ground missed so far. `isCounting`: the first engine is there, so that somebody can be short. */
export type WholeView = ExerciseView & { readonly isCounting: boolean; readonly shortfall: Shortfall }

/** What a place knows at the moment. What it does not know is not in here at all. */
export type SeatView = {
  readonly fire?: Pick<WholeView, 'flow_gpm' | 'asked_gpm' | 'isCounting' | 'shortfall'>
  readonly engine_gal?: number
  readonly isEngineHeld?: boolean
  readonly tanks: readonly TankView[]
  readonly fills: readonly FillView[]
  readonly tenders: readonly TenderView[]
}

/** Whoever has the map of where everybody is. */
export const seesMap = (role: Role): boolean => role === 'facilitator' || role === 'waterSupply'

/**
 * All there is to see of a session at its clock.
 *
 * @param flows what was recorded up to then, where it has been read already
 */
export function wholeViewOf(session: Session, flows: SessionFlows = readFlows(session)): WholeView {
  return { ...viewOf(session, flows), isCounting: session.clock_s > session.now.scenario.demand.countFrom_s, shortfall: sessionShortfall(session, flows) }
}

/**
 * The view from a seat. Attack knows its own water. A dump or fill site knows what stands there and who is there or on the
 * way to it. Water supply knows where everybody is, and no level it is not told. Who leads sees all.
 *
 * @param siteId the site of a dump or fill seat; absent: none is seen
 */
export function seenFrom(whole: WholeView, role: Role, siteId?: string): SeatView {
  const { flow_gpm, asked_gpm, isCounting, shortfall, engine_gal, isEngineHeld, tanks, fills, tenders } = whole
  const fire = { flow_gpm, asked_gpm, isCounting, shortfall }
  const nothing = { tanks: [], fills: [], tenders: [] }
  const here = tenders.filter((tender) => tender.siteId === siteId)
  switch (role) {
    case 'facilitator':
      return { fire, engine_gal, isEngineHeld, tanks, fills, tenders }
    case 'waterSupply':
      return { ...nothing, fire, tenders }
    case 'attack':
      return { ...nothing, fire, engine_gal, isEngineHeld }
    case 'dumpSite':
      return { ...nothing, tanks: tanks.filter(({ dumpSiteId }) => dumpSiteId === siteId), tenders: here }
    case 'fillSite':
      return { ...nothing, fills: fills.filter(({ fillSiteId }) => fillSiteId === siteId), tenders: here }
  }
}
