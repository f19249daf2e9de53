'use client'

import { useEffect, useId, useState } from 'react'
import type { Working } from '@/lib/supply'
import { say } from '../_text'
import { FigureTile, type FigureTileProps } from '../_ui/figure-tile'
import { WorkingPanel } from '../_ui/open-working'
import { getPlanner } from '../_worker'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'

type Props = { figure: string; label: string; value: string; note?: string; look?: FigureTileProps['look'] }

/** A figure of the answer; pressed, its working opens under it and follows every change. */
export function FigureRow({ figure, label, value, note, look }: Props) {
  const { result, names } = usePlanBoard()
  const [isOpen, setIsOpen] = useState(false)
  const [working, setWorking] = useState<Working>()
  const panelId = useId()
  useEffect(() => {
    if (!isOpen) return
    let isGone = false
    void getPlanner().explain(figure).then((found) => { if (!isGone) setWorking(found) }, () => { if (!isGone) setWorking(undefined) })
    return () => { isGone = true }
  }, [isOpen, figure, result])
  return (
    <>
      <FigureTile label={label} value={value} note={note} look={look} isOpen={isOpen} panelId={panelId} onToggle={() => { setIsOpen(!isOpen) }} />
      <div id={panelId} className={styles.workingSlot} hidden={!isOpen}>
        {isOpen && (working ? <WorkingPanel title={label} working={working} names={names} onClose={() => { setIsOpen(false) }} /> : <p className={styles.quiet}>{say('plan.figure.none')}</p>)}
      </div>
    </>
  )
}
