'use client'

import { useRouter } from 'next/navigation'
import { getClient } from '../_client'
import { say, sayIssue } from '../_text'
import { screenHref } from '../_links/screens'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'

/** Begins an empty plan of a district, numbered after those there are, and opens it. */
export function useNewPlan(districtId: string, planCount: number): () => Promise<void> {
  const router = useRouter()
  const toast = useToast()
  const [system] = useUnitSystem()
  return async () => {
    const plan = { id: getClient().newId(), name: say('plan.new.name', { number: planCount + 1 }), districtId, fillSites: [], dumpSites: [], tenders: [], legNotes: [] }
    const refused = await getClient().create(plan, { label: say('plan.new') })
    if (refused) toast({ text: sayIssue(refused, () => undefined, system), look: 'danger' })
    else router.push(screenHref('plan', districtId, plan.id))
  }
}
