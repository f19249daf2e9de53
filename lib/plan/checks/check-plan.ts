import { issue, type Issue } from '../../issue'
import type { Bundle } from '../documents/bundle'
import type { DumpSite } from '../documents/plan-sites'
import { findApparatus, findDraftingPump, findTender, isCounted } from '../find-item'
import { checkReferences } from './check-references'

type Docs = Pick<Bundle, 'district' | 'plan'>

/**
 * What stands in the way of an answer (`block`), and what a person must look at (`warn`),
 * before any physics is done. Rules in order; each is one function of the documents.
 */
export function checkPlan(docs: Docs): Issue[] {
  return [checkReferences, checkParts, checkFillSites, checkDumpSites, checkTenders, checkTwoPlaces].flatMap((rule) => rule(docs))
}

/** A shuttle needs a place to fill, a place to dump and something that drives between. */
function checkParts({ plan }: Docs): Issue[] {
  const issues: Issue[] = []
  if (plan.fillSites.length === 0) issues.push(issue('plan-without-fill-site', 'block', [plan.id]))
  if (plan.dumpSites.length === 0) issues.push(issue('plan-without-dump-site', 'block', [plan.id]))
  if (plan.tenders.length === 0) issues.push(issue('plan-without-tender', 'block', [plan.id]))
  return issues
}

function checkFillSites(docs: Docs): Issue[] {
  return docs.plan.fillSites.flatMap((site) => {
    if (site.rate_gpm !== undefined && site.rate_gpm > 0) return []
    if (site.pumperId === undefined && (docs.plan.hoseLays ?? []).some((lay) => lay.toId === site.id && isCounted(lay))) return []
    if (site.pumperId === undefined) return [issue('fill-site-without-pumper', 'block', [site.id])]
    const pump = findDraftingPump(docs, site.pumperId)
    if (!pump) return findApparatus(docs, site.pumperId) ? [issue('fill-pumper-cannot-draft', 'block', [site.id, site.pumperId])] : []
    return pump.rated_gpm ? [] : [issue('pumper-without-rating', 'block', [pump.id])]
  })
}

function checkDumpSites({ plan, district }: Docs): Issue[] {
  return plan.dumpSites.flatMap((site) => {
    if (site.nurseId !== undefined) return checkNurse({ plan, district }, site)
    const tanks = (site.portableTankIds ?? []).flatMap((id) => district.equipment.filter((item) => item.id === id))
    const wrong = tanks.filter(({ kind }) => kind !== 'portableTank').map(({ id }) => issue('not-a-portable-tank', 'block', [site.id, id]))
    // Nobody having said which tank comes is answered by an assumed one, said so; a capacity entered as nothing is meant.
    return tanks.length === 0 && site.tankCapacity_gal === 0 ? [issue('dump-site-without-tank', 'block', [site.id])] : wrong
  })
}

/** A nurse tender has a tank and stays where it is. */
function checkNurse(docs: Docs, site: DumpSite): Issue[] {
  const nurse = findTender(docs, site.nurseId)
  if (!nurse) return findApparatus(docs, site.nurseId) ? [issue('not-a-tender', 'block', [site.nurseId ?? site.id])] : []
  if (!nurse.tank_gal) return [issue('tender-without-tank', 'block', [nurse.id])]
  return docs.plan.tenders.some(({ tenderId }) => tenderId === nurse.id) ? [issue('nurse-hauls', 'block', [nurse.id, site.id])] : []
}

function checkTenders(docs: Docs): Issue[] {
  const issues: Issue[] = []
  const seen = new Set<string>()
  for (const { tenderId } of docs.plan.tenders) {
    const tender = findTender(docs, tenderId)
    if (!tender) {
      if (findApparatus(docs, tenderId)) issues.push(issue('not-a-tender', 'block', [tenderId]))
      continue
    }
    if (!tender.tank_gal) issues.push(issue('tender-without-tank', 'block', [tender.id]))
    if (tender.full_lb !== undefined && tender.empty_lb !== undefined && tender.full_lb < tender.empty_lb)
      issues.push(issue('tender-lighter-full', 'warn', [tender.id], { full_lb: tender.full_lb, empty_lb: tender.empty_lb }))
    if (seen.has(tenderId)) issues.push(issue('tender-twice', 'block', [tenderId]))
    seen.add(tenderId)
  }
  return issues
}

/** One pumper cannot stand in two places. */
function checkTwoPlaces({ plan }: Docs): Issue[] {
  const at = new Map<string, string>()
  return [...plan.fillSites, ...plan.dumpSites].flatMap(({ id, pumperId }) => {
    if (pumperId === undefined) return []
    const other = at.get(pumperId)
    at.set(pumperId, id)
    return other ? [issue('pumper-in-two-places', 'block', [pumperId, other, id])] : []
  })
}
