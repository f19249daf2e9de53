import type { SheetRef } from '@/lib/book'
import type { District, Plan } from '@/lib/plan'
import type { SiteKind } from '../_look/site-shapes'
import { say } from '../_text'
import '../_text/areas/draft'
import '../_text/areas/book'

export type ListedSheet = { readonly ref: SheetRef; readonly title: string; readonly what: string; readonly symbol: SiteKind; readonly isInner: boolean }
export type SheetGroup = { readonly id: string; readonly title: string; readonly sheets: readonly ListedSheet[] }

/** The sheets as the screen lists them: plans with their sites, draft sites, target hazards without a plan. */
export function sheetGroups(district: District, plans: readonly Plan[], refs: readonly SheetRef[]): SheetGroup[] {
  const listed = refs.map((ref): ListedSheet => {
    const plan = 'planId' in ref ? plans.find(({ id }) => id === ref.planId) : undefined
    switch (ref.kind) {
      case 'plan': return { ref, title: plan?.name ?? '', what: say('book.sheet.plan'), symbol: 'fireGround', isInner: false }
      case 'fill': return { ref, title: plan?.fillSites.find(({ id }) => id === ref.siteId)?.name ?? '', what: say('plan.card.fill'), symbol: 'fillSite', isInner: true }
      case 'dump': return { ref, title: plan?.dumpSites.find(({ id }) => id === ref.siteId)?.name ?? '', what: say('plan.card.dump'), symbol: 'dumpSite', isInner: true }
      case 'draft': return { ref, title: district.draftSites.find(({ id }) => id === ref.draftSiteId)?.name ?? '', what: say('draft.title'), symbol: 'draftSite', isInner: false }
      case 'hazard': return { ref, title: district.hazards.find(({ id }) => id === ref.hazardId)?.name ?? '', what: say('book.sheet.hazard'), symbol: 'hazard', isInner: false }
    }
  })
  return [
    { id: 'plans', title: say('book.contents.plans'), sheets: listed.filter(({ ref }) => 'planId' in ref) },
    { id: 'drafts', title: say('book.contents.drafts'), sheets: listed.filter(({ ref }) => ref.kind === 'draft') },
    { id: 'hazards', title: say('book.contents.hazards'), sheets: listed.filter(({ ref }) => ref.kind === 'hazard') },
  ].filter(({ sheets }) => sheets.length > 0)
}
