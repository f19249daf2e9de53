import type { Plan } from '@/lib/plan'
import type { SheetTrial } from '@/lib/supply'

/** What a plan has set at a draft site: what its sheet begins with. */
export function trialOf(plan: Plan | undefined, draftSiteId: string): SheetTrial {
  const fill = plan?.fillSites.find((site) => site.draftSiteId === draftSiteId)
  const liftEvidence = fill?.evidence?.lift_ft
  return { ...(plan?.season && { season: plan.season }), ...(fill?.suction && { suction: fill.suction }), ...(fill?.lift_ft !== undefined && { lift_ft: fill.lift_ft, ...(liftEvidence && { liftEvidence }) }) }
}
