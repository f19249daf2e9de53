'use client'

import { useRouter } from 'next/navigation'
import { getClient } from '../_client'
import { say } from '../_text'
import { screenHref } from '../_links/screens'
import { useTellRefused } from '../_ui/use-tell-refused'

/** Begins an empty plan of a district, numbered after those there are, and opens it. */
export function useNewPlan(districtId: string, planCount: number): () => Promise<void> {
  const router = useRouter()
  const tellRefused = useTellRefused()
  return async () => {
    const plan = { id: getClient().newId(), name: say('plan.new.name', { number: planCount + 1 }), districtId, fillSites: [], dumpSites: [], tenders: [], legNotes: [] }
    const refused = await getClient().create(plan, { label: say('plan.new') })
    if (!tellRefused(refused)) router.push(screenHref('plan', districtId, plan.id))
  }
}
