import { issue, type Issue } from '../issue'
import { findDraftSite, type Bundle } from '../plan'
import { findDraftSheet } from './draft-sheet'
import type { ResolvedFillSite } from './fill-site'
import { primingOf } from './priming'

/**
 * Whether the pumper of a fill site primes at its draft site within the limit of its rating: a plan counts on the prime.
 *
 * @returns `fill-prime-slow` (warn); none for a hydrant, a portable pump, where no draft site is named, or where the pump cannot lift the
 *   water at all, which the draft says
 */
export function fillPrimingIssues(bundle: Bundle, { site, source, pump, draft, lift }: Pick<ResolvedFillSite, 'site' | 'source' | 'pump' | 'draft' | 'lift'>): Issue[] {
  const draftSite = findDraftSite(bundle, site.draftSiteId)
  if (!draft || !lift || !draftSite || pump?.kind !== 'pumper' || source?.kind === 'pressureHydrant') return []
  const sheet = findDraftSheet(bundle.district, draftSite, pump, { lift_ft: lift.lift_ft - lift.drop_ft, ...(bundle.plan.season && { season: bundle.plan.season }), ...(site.suction && { suction: site.suction }) })
  if (!sheet) return []
  const { time: { expected_s, limit_s }, primerFrom } = primingOf(sheet, pump)
  if (expected_s === undefined || expected_s <= limit_s) return []
  return [issue('fill-prime-slow', 'warn', [site.id, pump.id], { expected_s, limit_s, primer: primerFrom === 'assumed' ? 'assumed' : 'known' })]
}
