import { expose } from 'comlink'
import type { Bundle } from '@/lib/plan'
import { checkCriterion, compareHandbook, compilePlan, creditCheck, type CreditCheck, type CriterionAnswer, type HandbookComparison } from '@/lib/supply'

/** All that the page shows of one plan. */
export type HandbookStudy = { comparison?: HandbookComparison; credit: CreditCheck; criterion?: CriterionAnswer }

export type HandbookService = {
  /** @param bundle with its ways found  @param today the day tests of pumps are judged on, YYYY-MM-DD  @param dependable_gpm of the plan; absent: not known yet */
  study(bundle: Bundle, today: string, dependable_gpm?: number): Promise<HandbookStudy>
}

const service: HandbookService = {
  study: async (bundle, today, dependable_gpm) => {
    const compiled = compilePlan(bundle)
    return { comparison: compareHandbook(compiled), credit: creditCheck(compiled, { today, ...(dependable_gpm !== undefined && { dependable_gpm }) }), criterion: checkCriterion(compiled) }
  },
}

expose(service)
