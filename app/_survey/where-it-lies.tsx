'use client'

import { say } from '../_text'
import '../_text/areas/survey'
import { PointField } from '../_ui/point-field'
import styles from './survey.module.css'
import { startEdit } from './district-start'
import type { EditBody } from '@/lib/plan'

/** Asks where a district lies that has neither map nor places: the bare grid begins there. */
export function WhereItLies({ onSay }: { onSay: (body: EditBody, label: string) => void }) {
  return (
    <div className={styles.fields}>
      <p className={styles.quiet}>{say('survey.start.why')}</p>
      <PointField label={say('survey.start.point')} value={undefined} onCommit={(point) => { if (point) onSay(startEdit(point), say('survey.start.title')) }} />
    </div>
  )
}
