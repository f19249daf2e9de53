'use client'

import { useMemo, type ReactNode } from 'react'
import type { Bundle } from '@/lib/plan'
import { PrintedOn } from '../_frame/printed-on'
import { Shell } from '../_frame/shell'
import { UndoButtons } from '../_frame/undo-buttons'
import type { PlanAnswerState } from '../_worker'
import { AnswerBar } from './answer-bar'
import { PlanBoardProvider, type PlanBoard } from './plan-context'
import { PlanNav } from './plan-nav'
import { PlanNotHere } from './plan-not-here'
import styles from './plan-study.module.css'
import type { PlanPage } from '../_links/plan-pages'
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
  const { district, plan, status, bundle, answer, names, acts } = usePlanDesk(districtId, planId)
  const { legs, result, pending } = answer
  // Figures that come later, of the same plan and ways, leave the bundle as it is: what is worked out from it goes on.
  const isFound = result !== undefined && !pending.answer
  const whole = useMemo(() => (bundle && isFound ? { ...bundle, legs: [...legs] } : undefined), [bundle, isFound, legs])
  const board = useMemo<PlanBoard | undefined>(() => district && plan && {
    district, plan, result, isWorking: !result && pending.answer, names, legs, selectedId: undefined, select: nothing, ...acts,
  }, [district, plan, result, pending.answer, names, legs, acts])

  if (!board || status === 'missing' || status === 'deleted') return <PlanNotHere district={district} districtId={districtId} planId={planId} status={status} />
  return (
    <Shell district={{ id: districtId, name: board.district.name }} screen="plan" actions={<UndoButtons />}>
      <PlanBoardProvider board={board}>
        <PlanNav districtId={districtId} planId={planId} name={board.plan.name} page={page} />
        <PrintedOn />
        <div className={styles.answer}><AnswerBar pending={pending} /></div>
        <div className={styles.content}>{children({ board, answer, bundle: whole })}</div>
      </PlanBoardProvider>
    </Shell>
  )
}
