'use client'

import { useRouter } from 'next/navigation'
import { useRef } from 'react'
import { readLogFile } from '@/lib/field-log'
import { getClient, getEventLog, useDistrict, useDocumentList } from '../_client'
import { PutAwayList } from '../_frame/put-away-list'
import { UndoButtons } from '../_frame/undo-buttons'
import { usePutAway } from '../_frame/use-put-away'
import { reviewHref } from '../_links/review-href'
import { Shell } from '../_frame/shell'
import { formatDay, say, sayIssue } from '../_text'
import '../_text/areas/review'
import '../_text/areas/log'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { DocumentList, DocumentRow } from '../_ui/document-list'
import { EmptyState } from '../_ui/empty-state'
import { logHref } from '../_links/log-href'
import { useAddress } from '../_ui/use-address'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './log.module.css'
import { NewLog } from './new-log'

/** The logs of a district: begin one, take one up, open one from a file, put one away. */
export function LogList({ districtId }: { districtId: string }) {
  const router = useRouter()
  const toast = useToast()
  const putAway = usePutAway()
  const [system] = useUnitSystem()
  const { plan: planId } = useAddress('plan')
  const district = useDistrict(districtId).doc
  const list = useDocumentList()
  const file = useRef<HTMLInputElement>(null)
  const own = list.entries.filter((entry) => entry.districtId === districtId)
  const logs = own.filter(({ kind }) => kind === 'log')
  const tellBad = (text: string) => { toast({ text, look: 'danger' }) }
  const openFile = async (chosen: File | undefined) => {
    if (!chosen) return
    const read = readLogFile(await chosen.text())
    if ('code' in read) { tellBad(`${chosen.name}: ${sayIssue(read, () => undefined, system)}`); return }
    const isHere = logs.some(({ id }) => id === read.log.id)
    const refused = isHere ? undefined : await getClient().create({ ...read.log, districtId }, { label: say('log.open-file') })
    if (refused) { tellBad(sayIssue(refused, () => undefined, system)); return }
    const before = new Set(getEventLog(read.log.id).view().events.map(({ id }) => id))
    const fresh = read.events.filter(({ id }) => !before.has(id))
    if (fresh.length > 0) await getEventLog(read.log.id).add(fresh)
    toast({ text: say('log.file-opened', { events: fresh.length }) })
    router.push(logHref(districtId, read.log.id))
  }
  return (
    <Shell {...(district && { district: { id: districtId, name: district.name } })} screen="log" actions={<UndoButtons />}>
      <div className={styles.page}>
        <header className={styles.listHead}>
          <div>
            <h1 className={styles.title}>{say('log.title')}</h1>
            <p className={styles.quiet}>{say('log.lead')}</p>
          </div>
          {logs.length > 0 && <ButtonLink href={reviewHref(districtId)} label={say('review.all')} iconAfter="arrowRight" />}
        </header>
        {logs.length === 0
          ? <EmptyState title={say(list.status === 'loading' ? 'log.loading' : list.status === 'unreachable' ? 'log.unreachable' : 'log.none')} {...(list.status === 'ready' && { text: say('log.none.text') })} />
          : (
            <DocumentList>
              {logs.map(({ id, name, updatedAt }) => (
                <DocumentRow key={id} href={logHref(districtId, id)} name={name} facts={[updatedAt && say('plan.changed-on', { day: formatDay(updatedAt) })]}>
                  <Button size="s" look="quiet" icon="trash" label={say('log.delete')} aria-label={say('kit.act-on', { act: say('log.delete'), name })} onClick={() => { void putAway(id, say('log.delete'), say('log.deleted', { name })) }} />
                </DocumentRow>
              ))}
            </DocumentList>
          )}
        <PutAwayList districtId={districtId} kinds={['log']} />
        <NewLog districtId={districtId} plans={own.filter(({ kind }) => kind === 'plan')} planId={planId} />
        <div>
          <Button label={say('log.open-file')} onClick={() => file.current?.click()} />
          <input ref={file} type="file" accept=".json,application/json" hidden aria-label={say('log.open-file')} onChange={(event) => { void openFile(event.target.files?.[0]); event.target.value = '' }} />
        </div>
      </div>
    </Shell>
  )
}
