import type { Bundle, DumpSite, EditBody, FillSite } from '../plan'
import { sitesOfTask } from '../supply'

type Kind = 'fillSites' | 'dumpSites'

/** What was measured or noted at a place and for a pumper, and is not so at another. */
const ownToPlace = {
  fillSites: ['lift_ft', 'rate_gpm', 'setUp_s', 'fillLineRise_ft', 'draftSiteId', 'sourceId', 'evidence'],
  dumpSites: ['tankSlope_in', 'transfer_gpm', 'leak_gpm', 'intake_gpm', 'outlet_gpm', 'setUp_s', 'pumpSetUp_s', 'draftLimit_in', 'supplyLine', 'supplyLineRise_ft', 'evidence'],
} as const

/**
 * A site given up and set up anew, elsewhere or with another pumper: it must be reached and made ready again, so it is another site.
 * Who was assigned to it follows; hose, one-lane stretches and measured ways of the old place stay behind, and so does the water in
 * its portable tanks.
 *
 * @param fields what is so of the new one
 * @param newId  its id
 * @returns edits of the plan; none where it has no such site
 */
export function replaceSite(bundle: Bundle, siteId: string, fields: Partial<FillSite> & Partial<DumpSite>, newId: string): EditBody[] {
  const { plan } = bundle
  const collection: Kind = plan.fillSites.some(({ id }) => id === siteId) ? 'fillSites' : 'dumpSites'
  const old = [...plan.fillSites, ...plan.dumpSites].find(({ id }) => id === siteId)
  if (!old) return []
  const isMoved = fields.point !== undefined
  const left = isMoved ? ownToPlace[collection] : collection === 'fillSites' ? ['rate_gpm', 'evidence'] : ['evidence']
  const kept = Object.fromEntries(Object.entries(old).filter(([field]) => !(left as readonly string[]).includes(field)))
  const field = collection === 'fillSites' ? 'fillSiteId' : 'dumpSiteId'
  // At the same place a measured way, a one-lane stretch or a lay still leads there; at another it does not.
  const follow = (list: 'legNotes' | 'oneLanes' | 'hoseLays', items: readonly { readonly id: string }[], ends: readonly string[]): EditBody[] => items.flatMap((item): EditBody[] => {
    const named = ends.filter((end) => (item as Record<string, unknown>)[end] === siteId)
    if (named.length === 0) return []
    return isMoved ? [{ kind: 'removeItem', collection: list, id: item.id }] : [{ kind: 'setFields', collection: list, id: item.id, set: Object.fromEntries(named.map((end) => [end, newId])) }]
  })
  return [
    { kind: 'addItem', collection, item: { ...kept, ...fields, id: newId } },
    ...plan.tenders.filter((task) => sitesOfTask(bundle, task)[field] === siteId).map((task): EditBody => ({ kind: 'setFields', collection: 'tenders', id: task.id, set: { [field]: newId } })),
    ...follow('legNotes', plan.legNotes, ['fromId', 'toId']),
    ...follow('oneLanes', plan.oneLanes ?? [], [field]),
    ...follow('hoseLays', plan.hoseLays ?? [], ['toId']),
    { kind: 'removeItem', collection, id: siteId },
  ]
}
