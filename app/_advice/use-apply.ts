'use client'

import { useRouter } from 'next/navigation'
import { planWith } from '@/lib/advise'
import type { EditBody } from '@/lib/plan'
import { copyOfPlan, getClient } from '../_client'
import { planPageHref, type PlanPage } from '../_links/plan-pages'
import type { PlanBoard } from '../_plan/plan-context'
import { say, sayIssue } from '../_text'
import '../_text/areas/advice'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useSayDone } from '../_ui/use-say-done'

export type Apply = {
  /** To this plan, as one act that can be undone. */
  here: (edits: readonly EditBody[], change: string) => void
  /** To a copy of the plan, which is then opened on the same page; this plan stays as it is. */
  variant: (edits: readonly EditBody[], change: string) => Promise<void>
}

/** The two ways to take advice. */
export function useApply({ plan, editPlan, names }: PlanBoard, page: PlanPage): Apply {
  const router = useRouter()
  const toast = useToast()
  const sayDone = useSayDone()
  const [system] = useUnitSystem()
  return {
    here(edits, change) {
      if (editPlan(edits, change)) sayDone(say('advice.applied', { change }))
    },
    async variant(edits, change) {
      const changed = planWith(copyOfPlan(plan, say('advice.variant.name', { name: plan.name, change }), () => getClient().newId()), edits)
      const refused = 'code' in changed ? changed : await getClient().create(changed.plan, { label: say('advice.apply-variant.of', { change }) })
      if (refused) {
        toast({ text: sayIssue(refused, names, system), look: 'danger' })
        return
      }
      if ('code' in changed) return
      router.push(planPageHref(page, plan.districtId, changed.plan.id))
      toast({ text: say('advice.variant.made', { name: changed.plan.name }) })
    },
  }
}
