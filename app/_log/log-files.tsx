'use client'

import { useRef, useState } from 'react'
import { logCsv, logFileText, readLogCsv, readLogFile, type ReadCsv } from '@/lib/field-log'
import type { FieldLog } from '@/lib/plan'
import { getEventLog } from '../_client'
import { logHref } from '../_links/log-href'
import { say, sayIssue, type UnitSystem } from '../_text'
import '../_text/areas/log'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Card } from '../_ui/card'
import { saveFile } from '../_ui/save-file'
import { useToast } from '../_ui/toast'
import { momentAt } from './clock-time'
import styles from './log.module.css'
import { takeBack } from './take-back'
import type { LogDesk } from './use-log'

type Tried = Pick<ReadCsv, 'fresh' | 'rowCount' | 'issues'> & { file: string }

const MOST_BYTES = 32 * 1024 * 1024

/** The log as a table or whole, out and in; nothing that comes in is kept before it was looked at. */
export function LogFiles({ desk, log, districtId, system }: { desk: LogDesk; log: FieldLog; districtId: string; system: UnitSystem }) {
  const toast = useToast()
  const file = useRef<HTMLInputElement>(null)
  const [tried, setTried] = useState<Tried>()
  const { events } = desk.events
  const open = async (chosen: File | undefined) => {
    if (!chosen) return
    if (chosen.size > MOST_BYTES) { toast({ text: say('issue.file-too-big', { file: chosen.name, size: chosen.size, limit: MOST_BYTES }), look: 'danger' }); return }
    const text = await chosen.text()
    if (!text.trimStart().startsWith('{')) {
      setTried({ file: chosen.name, ...readLogCsv(text, { logId: log.id, world: desk.world, known: events, momentOf: (time_s, after_ms) => momentAt(time_s, log.date, log.zone, after_ms) }) })
      return
    }
    const read = readLogFile(text)
    const known = new Set(events.map(({ id }) => id))
    if ('code' in read) setTried({ file: chosen.name, fresh: [], rowCount: 0, issues: [read] })
    else if (read.log.id !== log.id) toast({ text: say('log.import.other-log', { file: chosen.name }), look: 'danger' })
    else setTried({ file: chosen.name, fresh: read.events.filter(({ id }) => !known.has(id)), rowCount: read.events.length, issues: [] })
  }
  const take = async ({ fresh }: Tried) => {
    await getEventLog(log.id).add(fresh)
    const undo = () => { void takeBack(desk, fresh).then((made) => { toast({ text: say('log.import.back', { count: made.length }) }) }) }
    toast({ text: say('log.import.taken', { count: fresh.length }), onUndo: undo })
    setTried(undefined)
  }
  return (
    <Card title={say('log.files')} level={2}>
      <div className={styles.row}>
        <ButtonLink icon="print" href={logHref(districtId, log.id, 'form')} label={say('log.files.form')} />
        <ButtonLink icon="edit" href={logHref(districtId, log.id, 'paper')} label={say('log.files.paper')} />
        <Button label={say('log.files.csv')} onClick={() => { saveFile(`${log.name}.csv`, logCsv(events, desk.world), 'text/csv') }} />
        <Button label={say('log.files.json')} onClick={() => { saveFile(`${log.name}.json`, logFileText(log, events)) }} />
        <Button label={say('log.files.open')} onClick={() => file.current?.click()} />
        <input ref={file} type="file" accept=".csv,.json,text/csv,application/json" hidden aria-label={say('log.files.open')} onChange={(event) => { void open(event.target.files?.[0]); event.target.value = '' }} />
      </div>
      {tried && (
        <div className={styles.form} role="status">
          {tried.issues.length > 0
            ? (
              <>
                <p className={styles.bad}>{say('log.import.bad', { file: tried.file })}</p>
                <ul className={styles.rows}>{tried.issues.map((one, i) => <li key={i}>{sayIssue(one, desk.names, system)}</li>)}</ul>
              </>
            )
            : <p>{say('log.import.try', { file: tried.file, rows: tried.rowCount, fresh: tried.fresh.length })}</p>}
          <div className={styles.row}>
            {tried.issues.length === 0 && tried.fresh.length > 0 && <Button look="primary" label={say('log.import.take', { count: tried.fresh.length })} onClick={() => { void take(tried) }} />}
            <Button look="quiet" label={say('log.import.leave')} onClick={() => { setTried(undefined) }} />
          </div>
        </div>
      )}
    </Card>
  )
}
