import { ratedSuction } from '../../hydraulics'
import { findDraftingPump, findDraftSite, findSource, type Bundle, type DraftingPump, type EditBody, type FillSite, type Suction } from '../../plan'
import { defaults, findHoseOf, findSuctionOf, lengthOf_ft } from '../../supply'
import type { Candidate, Proviso } from '../candidate'
import { assumedEffort } from '../effort'

const MOST_BAYS = 12
const MOST_SUCTION_LINES = 4
const MOST_FILL_LINES = 6

/**
 * At each fill site: one more bay, more or larger suction, more or larger fill line, of what its pumper carries.
 *
 * Where the fill rate was measured only the bay is offered: nothing says how a measured rate changes with hose or suction.
 */
export function fillSiteChanges(bundle: Bundle): Candidate[] {
  return bundle.plan.fillSites.flatMap((site) => {
    const pump = findDraftingPump(bundle, site.pumperId)
    const bays = moreBays(bundle, site, pump)
    return !pump?.rated_gpm || site.rate_gpm !== undefined ? bays : [...bays, ...suctionChanges(bundle, site, pump), ...fillLineChanges(bundle, site, pump)]
  })
}

const set = (site: FillSite, fields: Record<string, unknown>): EditBody => ({ kind: 'setFields', collection: 'fillSites', id: site.id, set: fields })

function candidate(kind: Candidate['kind'], site: FillSite, pump: DraftingPump | undefined, fields: Record<string, unknown>, values: Candidate['values'], provisos: readonly Proviso[], variant = ''): Candidate {
  return {
    id: [kind, site.id, variant].filter(Boolean).join(':'), group: `${kind}:${site.id}`, kind,
    subjectIds: [site.id, ...(pump ? [pump.id] : [])], values, edits: [set(site, fields)],
    effort: { ...assumedEffort[kind], apparatusCount: 0 }, provisos,
  }
}

/** The fill line as it is reckoned with. */
const layOf = (site: FillSite) => ({
  size_in: site.fillLine?.size_in ?? defaults.fillLineSize_in.value,
  length_ft: site.fillLine?.length_ft ?? defaults.fillLineLength_ft.value,
  lineCount: site.fillLine?.lineCount ?? 1,
})

function moreBays(bundle: Bundle, site: FillSite, pump: DraftingPump | undefined): Candidate[] {
  const bayCount = (site.bayCount ?? 1) + 1
  if (bayCount > MOST_BAYS) return []
  const { size_in, length_ft, lineCount } = layOf(site)
  const hasHose = pump !== undefined && lengthOf_ft(findHoseOf(bundle, pump), size_in) >= length_ft * lineCount * bayCount
  const provisos: Proviso[] = ['room-at-fill', ...(hasHose ? [] : (['hose-not-listed'] as const))]
  // The bays share one pump: one more gains by the hook-up it saves, and then most when one fills at a time.
  return [
    candidate('fillBay', site, pump, { bayCount }, { bayCount, order: site.bayOrder ?? 'together' }, provisos),
    ...(site.bayOrder === 'oneAtATime' ? [] : [candidate('fillBay', site, pump, { bayCount, bayOrder: 'oneAtATime' }, { bayCount, order: 'oneAtATime' }, provisos, 'oneAtATime')]),
    ...otherOrder(site, pump),
  ]
}

/** Hooked-up tenders share the pump, or one fills while the next stands ready: nothing but the order at the valves changes. */
function otherOrder(site: FillSite, pump: DraftingPump | undefined): Candidate[] {
  if ((site.bayCount ?? 1) < 2) return []
  const bayOrder = site.bayOrder === 'oneAtATime' ? 'together' : 'oneAtATime'
  return [candidate('bayOrder', site, pump, { bayOrder }, { order: bayOrder }, [])]
}

/** The suction as it is reckoned with: the plan's own, else the pumper's. */
export function suctionOf(bundle: Bundle, site: FillSite, pump: DraftingPump): Suction {
  const carried = pump.kind === 'pumper' ? pump : undefined
  return {
    size_in: carried?.suction_in ?? ratedSuction(pump.rated_gpm ?? 1000).suction.size_in,
    length_ft: findDraftSite(bundle, site.draftSiteId)?.hoseRun_ft ?? carried?.suction_ft ?? defaults.suctionLength_ft.value,
    ...site.suction,
  }
}

function suctionChanges(bundle: Bundle, site: FillSite, pump: DraftingPump): Candidate[] {
  const draftSite = findDraftSite(bundle, site.draftSiteId)
  const source = findSource(bundle, site.sourceId ?? draftSite?.sourceId)
  if (source?.kind === 'pressureHydrant') return []
  const now = suctionOf(bundle, site, pump)
  const lines = now.lineCount ?? 1
  const stock = findSuctionOf(bundle, pump)
  const found: Candidate[] = []
  // A dry hydrant has one connection: a second line would need a second hydrant.
  if (!draftSite?.dryHydrant && lines < MOST_SUCTION_LINES && (!stock || lengthOf_ft(stock, now.size_in) >= (lines + 1) * now.length_ft)) {
    const suction = { ...now, lineCount: lines + 1 }
    found.push(candidate('suctionLine', site, pump, { suction }, { lineCount: lines + 1, size_in: now.size_in, length_ft: now.length_ft }, stock ? [] : ['suction-not-listed']))
  }
  for (const { size_in, length_ft } of stock ?? []) {
    if (size_in > now.size_in && length_ft >= lines * now.length_ft) found.push(candidate('suctionSize', site, pump, { suction: { ...now, size_in } }, { size_in }, [], String(size_in)))
  }
  return found
}

function fillLineChanges(bundle: Bundle, site: FillSite, pump: DraftingPump): Candidate[] {
  const now = layOf(site)
  const stock = findHoseOf(bundle, pump)
  const bays = site.bayCount ?? 1
  const found: Candidate[] = []
  if (now.lineCount < MOST_FILL_LINES && (!stock || lengthOf_ft(stock, now.size_in) >= now.length_ft * (now.lineCount + 1) * bays)) {
    const lineCount = now.lineCount + 1
    found.push(candidate('fillLineCount', site, pump, { fillLine: { ...now, lineCount } }, { lineCount, size_in: now.size_in }, ['second-inlet', ...(stock ? [] : (['hose-not-listed'] as const))]))
  }
  for (const { size_in, length_ft } of stock ?? []) {
    if (size_in > now.size_in && length_ft >= now.length_ft * now.lineCount * bays) found.push(candidate('fillLineSize', site, pump, { fillLine: { ...now, size_in } }, { size_in }, [], String(size_in)))
  }
  return found
}
