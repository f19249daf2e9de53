'use client'

import { useMemo, type ReactNode } from 'react'
import type { Bundle, EditBody } from '@/lib/plan'
import { getClient, useSaveState } from '../_client'
import { say } from '../_text'
import { ButtonLink } from '../_ui/button-link'
import { EmptyState } from '../_ui/empty-state'
import { SaveState } from '../_ui/save-state'
import { screenHref } from '../_ui/screens'
import { Shell } from '../_ui/shell'
import type { PlanAnswerState } from '../_worker'
import { AnswerBar } from './answer-bar'
import { PlanBoardProvider, type PlanBoard } from './plan-context'
import { PlanNav } from './plan-nav'
import type { PlanPage } from './plan-pages'
import styles from './plan-study.module.css'
import { UndoButtons } from './undo-buttons'
import { usePlanDesk } from './use-plan-desk'

/** What a page about one plan works on. */
export type Study = {
  board: PlanBoard
  answer: PlanAnswerState
  /** With every way the plan drives; the same object until the plan changes. Absent until the roads are found. */
  bundle: Bundle | undefined
}

const nothing = () => undefined

/** The frame of a page that looks closer at one plan: its answer stays in sight above. */
export function PlanStudy({ districtId, planId, page, children }: { districtId: string; planId: string; page: PlanPage; children: (study: Study) => ReactNode }) {
  const { district, plan, status, bundle, answer, names, edit } = usePlanDesk(districtId, planId)
  const save = useSaveState()
  const { legs, result, pending } = answer
  // Figures that come later, of the same plan and ways, leave the bundle as it is: what is worked out from it goes on.
  const isFound = result !== undefined && !pending.answer
  const whole = useMemo(() => (bundle && isFound ? { ...bundle, legs: [...legs] } : undefined), [bundle, isFound, legs])
  const board = useMemo<PlanBoard | undefined>(() => district && plan && {
    district, plan, result, names, selectedId: undefined, select: nothing,
    newId: () => getClient().newId(),
    editPlan: (body, label) => { edit([{ docId: planId, body: [body].flat() as EditBody[] }], label) },
    editDistrict: (body, label) => { edit([{ docId: districtId, body: [body].flat() as EditBody[] }], label) },
    editBoth: (changes, label) => { edit([{ docId: districtId, body: changes.district }, { docId: planId, body: changes.plan }], label) },
  }, [district, plan, result, names, edit, planId, districtId])

  const shellDistrict = district && { id: districtId, name: district.name }
  if (status === 'missing' || status === 'deleted')
    return <Shell district={shellDistrict} screen="plan"><EmptyState title={say('plan.missing')}><ButtonLink href={screenHref('plan', districtId)} label={say('plan.missing.back')} /></EmptyState></Shell>
  if (!board) return <Shell district={shellDistrict} screen="plan"><EmptyState title={status === 'unreachable' ? say('plan.unreachable') : say('plan.loading')} /></Shell>
  return (
    <Shell district={shellDistrict} screen="plan" saveState={<SaveState state={save.state} unsentCount={save.unsentCount} />} actions={<UndoButtons />}>
      <PlanBoardProvider board={board}>
        <PlanNav districtId={districtId} planId={planId} name={board.plan.name} page={page} />
        <div className={styles.answer}><AnswerBar pending={pending} /></div>
        <div className={styles.content}>{children({ board, answer, bundle: whole })}</div>
      </PlanBoardProvider>
    </Shell>
  )
}
