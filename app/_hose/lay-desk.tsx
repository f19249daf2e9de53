'use client'

import { useEffect, useState } from 'react'
import type { Point } from '@/lib/geo'
import type { Lay } from '@/lib/plan'
import { usePlanBoard } from '../_plan/plan-context'
import { say } from '../_text'
import '../_text/areas/hose'
import { EmptyState } from '../_ui/empty-state'
import styles from './hose.module.css'
import { LayAnswer } from './lay-answer'
import type { LayEnd } from './lay-ends'
import { LayForm } from './lay-form'
import { LayMap } from './lay-map'
import { withPoint } from './lay-points'
import { useHoseStudy } from './use-hose-study'

/** One lay: its form on the left, the map and what it carries beside it. */
export function LayDesk({ lay, begins, goals }: { lay: Lay; begins: readonly LayEnd[]; goals: readonly LayEnd[] }) {
  const { district, plan, editPlan } = usePlanBoard()
  const { study, failure, isPending } = useHoseStudy(district, plan, lay.id)
  const [isPlacing, setPlacing] = useState(false)
  const setPoints = (points: readonly Point[], label: string) => {
    editPlan({ kind: 'setFields', collection: 'hoseLays', id: lay.id, set: { points } }, label)
  }
  useEffect(() => {
    if (!isPlacing) return
    const onKey = (event: KeyboardEvent) => { if (event.key === 'Escape') setPlacing(false) }
    window.addEventListener('keydown', onKey)
    return () => { window.removeEventListener('keydown', onKey) }
  }, [isPlacing])
  return (
    <div className={styles.columns}>
      <div className={styles.form}>
        <LayForm lay={lay} begins={begins} goals={goals} answer={study?.answer} isPlacing={isPlacing} onPlacing={setPlacing} onPoints={setPoints} />
      </div>
      <div className={styles.column}>
        <LayMap
          lay={lay} answer={study?.answer} isPlacing={isPlacing}
          onMove={(index, point) => { setPoints(lay.points.with(index, point), say('hose.point.moved', { number: index + 1 })) }}
          onPlace={(point) => { setPoints(withPoint(lay.points, point), say('hose.point.place')); setPlacing(false) }}
        />
        <p className={styles.pending} role="status">{isPending && !failure ? say('hose.working') : ''}</p>
        {failure && <EmptyState title={say('hose.failed', { reason: failure })} />}
        {study && <div className={styles.column} aria-busy={isPending}><LayAnswer study={study} lay={lay} /></div>}
      </div>
    </div>
  )
}
