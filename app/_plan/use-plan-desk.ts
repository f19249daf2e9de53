'use client'

import { useCallback, useMemo } from 'react'
import { namesOf, type Bundle, type District, type EditBody, type Plan } from '@/lib/plan'
import { FIRE_GROUND } from '@/lib/supply'
import { bundleFromDocuments, getClient, useDistrict, usePlan, type DocumentView } from '../_client'
import { say, sayIssue, type NameOf } from '../_text'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useLayHeights, usePlanAnswer, type PlanAnswerState } from '../_worker'
import { useKeepAnswer } from './kept-answers'
import type { PlanBoard } from './plan-context'

export type PlanDesk = {
  district: District | undefined
  plan: Plan | undefined
  /** Whether the plan has come, and why not. */
  status: DocumentView['status']
  /** Both documents as one; its legs are only those kept in them. */
  bundle: Bundle | undefined
  answer: PlanAnswerState
  names: NameOf
  /** One act of the user; a refusal is told in a line. @returns whether it was taken */
  edit: (changes: { docId: string; body: readonly EditBody[] }[], label: string) => boolean
  /** The same for the cards of the plan: its part of their board. */
  acts: Pick<PlanBoard, 'newId' | 'editPlan' | 'editDistrict' | 'editBoth'>
}

/** A plan with its district, its answer, the names of all in it, and the way to change it. */
export function usePlanDesk(districtId: string, planId: string): PlanDesk {
  const district = useDistrict(districtId).doc
  const { doc: plan, status } = usePlan(planId)
  const toast = useToast()
  const [system] = useUnitSystem()

  const heights = useLayHeights(district, plan)
  const bundle = useMemo(() => (district && plan && heights ? bundleFromDocuments(district, plan, [], heights) : undefined), [district, plan, heights])
  const answer = usePlanAnswer(bundle)
  useKeepAnswer(district, plan, answer)

  const itemNames = useMemo(() => (bundle ? namesOf(bundle) : new Map<string, string>()), [bundle])
  const hazardName = district?.hazards.find(({ id }) => id === plan?.hazardId)?.name
  const names: NameOf = useCallback((id) => itemNames.get(id) ?? (id === FIRE_GROUND ? (hazardName ?? say('plan.fire-ground')) : undefined), [itemNames, hazardName])

  const edit = useCallback((changes: { docId: string; body: readonly EditBody[] }[], label: string) => {
    const full = changes.filter(({ body }) => body.length > 0)
    const refused = full.length > 0 ? getClient().act(full, { label }) : undefined
    if (refused) toast({ text: sayIssue(refused, names, system), look: 'danger' })
    return !refused
  }, [names, system, toast])

  const acts = useMemo<PlanDesk['acts']>(() => ({
    newId: () => getClient().newId(),
    editPlan: (body, label) => edit([{ docId: planId, body: [body].flat() as EditBody[] }], label),
    editDistrict: (body, label) => edit([{ docId: districtId, body: [body].flat() as EditBody[] }], label),
    editBoth: (changes, label) => edit([{ docId: districtId, body: changes.district }, { docId: planId, body: changes.plan }], label),
  }), [edit, planId, districtId])

  return { district, plan, status, bundle, answer, names, edit, acts }
}
