import { issue, type Issue } from '../issue'
import { backUpBudget, type BackUpBudget } from './back-up-budget'
import { backUpSteps, type BackUpStep } from './back-up-steps'
import { backUpPrimeWindow, type BackUpRig, type BackUpSite, type BackUpWindow } from './back-up-window'

export type BackUpCard = {
  readonly window: BackUpWindow
  readonly budget: BackUpBudget
  readonly steps: readonly BackUpStep[]
  readonly issues: readonly Issue[]
}

/**
 * The back-up prime card of one pumper at one site: window, budgets, steps.
 *
 * @param openDischarge_gpm the discharge that might be opened in place of the loop, above 0
 * @returns data only; issues of the window, and `back-up-water-short` (warn), `back-up-overflow-at-once` (note)
 */
export function backUpCard(rig: BackUpRig, site: BackUpSite, openDischarge_gpm: number): BackUpCard {
  const window = backUpPrimeWindow(rig, site)
  const budget = backUpBudget(rig, site, window, openDischarge_gpm)
  const issues = [...window.issues]
  if (budget.waterOnHand_gal < budget.waterNeeded_gal) {
    issues.push(issue('back-up-water-short', 'warn', [], { onHand_gal: budget.waterOnHand_gal, needed_gal: budget.waterNeeded_gal }))
  }
  if (budget.overflowAfter_s !== undefined && budget.overflowAfter_s < 10) {
    issues.push(issue('back-up-overflow-at-once', 'note', [], { after_s: budget.overflowAfter_s, perTenSeconds_gal: budget.overflowPerTenSeconds_gal ?? 0 }))
  }
  return { window, budget, steps: backUpSteps(site, window, budget), issues }
}
