import type { Change, Fact } from '../plan'
import type { Seat } from './seat-view'

/**
 * Whether a seat comes to know of a fact when it comes about: a trouble where it can be seen or is told to, a decision
 * where it was to be heard. Water supply hears every order; an order that was misheard is known to nobody.
 *
 * @source common practice, no source
 */
export function hearsOf({ cause, change }: Pick<Fact, 'cause' | 'change'>, { role, siteId }: Seat): boolean {
  const isOrder = cause === 'decision'
  if (isOrder && role === 'waterSupply') return true
  switch (change.kind) {
    case 'fillRate':
    case 'sourceLow':
      return role === 'fillSite' && change.fillSiteId === siteId
    case 'tankLeak':
    case 'tankTips':
      return role === 'dumpSite' && change.dumpSiteId === siteId
    case 'demand':
    case 'moreDemand':
      return role === 'attack'
    case 'tenderOut':
    case 'unitLate':
    case 'layRate':
    case 'roadClosed':
    case 'roadOpened':
      return role === 'waterSupply'
    case 'sendTender':
      return isOrder && siteId !== undefined && [change.fillSiteId, change.dumpSiteId].includes(siteId)
    case 'plan':
      return false
  }
}

/**
 * A change as it is told to a seat: of what was changed in the plan only who was called, and of a closed road whether there
 * is a way round, without the lines that are driven.
 */
export function toldOf(change: Change): Change {
  if (change.kind === 'roadClosed') return { ...change, detours: change.detours.slice(0, 1).map((way) => ({ ...way, path: way.path.slice(0, 2) })) }
  if (change.kind !== 'plan') return change
  const called = change.edits.flatMap(({ doc, body }) => (body.kind === 'addItem' && body.collection === 'tenders' ? [{ doc, body: { kind: body.kind, collection: body.collection, item: { id: body.item.id, tenderId: body.item.tenderId } } }] : []))
  return { kind: 'plan', edits: called }
}
