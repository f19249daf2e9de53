import type { DraftingPump, Plan } from '@/lib/plan'

/** The pumper a draft site's sheet is for, and why this one. */
export type SitePumper = {
  readonly pump: DraftingPump | undefined
  /** `asked`: chosen here or named in the address; `plan`: a plan has it here; `first`: nobody said. */
  readonly from: 'asked' | 'plan' | 'first'
  readonly planName?: string
}

/**
 * The pumper a sheet is for: the one asked for, else that of the plan it was opened from, else that of another plan that fills here,
 * else the first that is rated, a pumper before a portable pump.
 *
 * @param askedId chosen on the sheet or named in its address
 * @param plan    the plan it was opened from
 * @param others  the district's other plans, as far as they have come
 */
export function sitePumper({ pumps, draftSiteId, askedId, plan, others = [] }: {
  readonly pumps: readonly DraftingPump[]; readonly draftSiteId: string; readonly askedId?: string | undefined
  readonly plan?: Plan | undefined; readonly others?: readonly Plan[]
}): SitePumper {
  const asked = pumps.find(({ id }) => id === askedId)
  if (asked) return { pump: asked, from: 'asked' }
  for (const one of plan ? [plan, ...others] : others) {
    for (const { draftSiteId: at, pumperId } of one.fillSites) {
      const pump = at === draftSiteId ? pumps.find(({ id }) => id === pumperId) : undefined
      if (pump) return { pump, from: 'plan', planName: one.name }
    }
  }
  const rated = pumps.filter(({ rated_gpm }) => rated_gpm !== undefined)
  return { pump: rated.find(({ kind }) => kind === 'pumper') ?? rated[0], from: 'first' }
}
