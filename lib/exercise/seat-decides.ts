import type { Change } from '../plan'
import type { Seat, SeatRole } from './seat-view'

/** Kinds of decision that each seat takes; everything else is decided by asking who leads. */
export const seatDecisions = {
  waterSupply: ['send', 'release', 'lay'],
  attack: ['demand'],
  dumpSite: ['leak'],
  fillSite: ['fill'],
} as const satisfies Record<SeatRole, readonly string[]>

export type SeatDecision = (typeof seatDecisions)[SeatRole][number]

/**
 * Whether a decision is this seat's to take: water supply moves tenders and lays, attack asks for a flow, a site sets its
 * own pump or tank right. Nobody at a seat can bring a trouble, change the plan, or act at another site.
 *
 * @source common practice, no source
 */
export function mayDecide(change: Change, { role, siteId }: Seat): boolean {
  switch (change.kind) {
    case 'sendTender':
      return role === 'waterSupply' && (change.fillSiteId ?? change.dumpSiteId) !== undefined
    case 'tenderOut':
      return role === 'waterSupply'
    case 'layRate':
      return role === 'waterSupply' && change.rateShare === 1
    case 'demand':
      return role === 'attack'
    case 'tankLeak':
      return role === 'dumpSite' && change.dumpSiteId === siteId && change.leak_gpm === 0
    case 'fillRate':
      return role === 'fillSite' && change.fillSiteId === siteId && change.rateShare === 1
    case 'plan':
    case 'roadClosed':
    case 'roadOpened':
    case 'unitLate':
    case 'sourceLow':
    case 'tankTips':
    case 'moreDemand':
      return false
  }
}
