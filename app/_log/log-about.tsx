'use client'

import type { FieldLog } from '@/lib/plan'
import { UndoButtons } from '../_frame/undo-buttons'
import { say } from '../_text'
import '../_text/areas/log'
import { Card } from '../_ui/card'
import { QuantityField } from '../_ui/quantity-field'
import { TextField } from '../_ui/text-field'
import { clockTime, momentAt } from './clock-time'
import { findTimeOfDay_s } from '@/lib/field-log'
import styles from './log.module.css'
import type { LogDesk } from './use-log'

/** What is known of a log beside its events. */
export function LogAbout({ desk, log }: { desk: LogDesk; log: FieldLog }) {
  const set = (field: string, value: unknown) => { desk.edit({ kind: 'setFields', set: { [field]: value ?? null } }, say('log.about')) }
  const time = (field: 'dispatched_ms' | 'ended_ms', typed: string | undefined) => {
    const timeOfDay_s = typed === undefined ? undefined : findTimeOfDay_s(typed)
    if (typed === undefined) set(field, undefined)
    else if (timeOfDay_s !== undefined) set(field, momentAt(timeOfDay_s, log.date, log.zone, field === 'ended_ms' ? log.dispatched_ms : undefined))
  }
  const shown = (at_ms: number | undefined) => (at_ms === undefined ? undefined : clockTime(at_ms, log.zone))
  return (
    <Card title={say('log.about')} level={2}>
      <div className={styles.form}>
        <div className={styles.row}><UndoButtons /></div>
        <TextField label={say('log.about.name')} value={log.name} isRequired onCommit={(name) => { set('name', name) }} />
        <TextField label={say('log.about.day')} value={log.date} isDay isRequired onCommit={(day) => { set('date', day) }} />
        <TextField label={say('log.about.dispatched')} value={shown(log.dispatched_ms)} hint={say('log.about.time.hint')} onCommit={(typed) => { time('dispatched_ms', typed) }} />
        <TextField label={say('log.about.ended')} value={shown(log.ended_ms)} hint={say('log.about.time.hint')} onCommit={(typed) => { time('ended_ms', typed) }} />
        <QuantityField label={say('log.about.needed')} unit="gpm" value={log.needed_gpm} min={0} max={20_000} hasMark={false} onCommit={({ value }) => { set('needed_gpm', value) }} />
        <TextField label={say('log.about.notes')} value={log.notes} isLong maxLength={4000} onCommit={(notes) => { set('notes', notes) }} />
      </div>
    </Card>
  )
}
