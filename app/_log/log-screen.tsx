'use client'

import dynamic from 'next/dynamic'
import { useEffect, useMemo, useState } from 'react'
import { useRouter } from 'next/navigation'
import { estimateNow, type Now } from '@/lib/field-log'
import type { SiteEvent } from '@/lib/plan'
import { logDevice } from '../_client'
import { BringBack } from '../_frame/bring-back'
import { Shell } from '../_frame/shell'
import { logHref } from '../_links/log-href'
import { say, sayIssue } from '../_text'
import '../_text/areas/log'
import { ButtonLink } from '../_ui/button-link'
import { Card } from '../_ui/card'
import { Caution } from '../_ui/caution'
import { ChoiceField } from '../_ui/choice-field'
import { EmptyState } from '../_ui/empty-state'
import { TextField } from '../_ui/text-field'
import { useAddress } from '../_ui/use-address'
import { useUnitSystem } from '../_ui/unit-system-context'
import { AddTender } from './add-tender'
import { EventList } from './event-list'
import { LogAbout } from './log-about'
import { LogState } from './log-state'
import styles from './log.module.css'
import { NowPanel } from './now-panel'
import { Readings } from './readings'
import { TenderRows } from './tender-rows'
import { UndoLast } from './undo-last'
import { postKey, postName, postsOf, useLog, type LogDesk } from './use-log'

const LogFiles = dynamic(() => import('./log-files').then((made) => made.LogFiles), { ssr: false })

const TICK_MS = 5000

/** A log at one post: what is expected next first, then what can be told, then all that was noted. */
export function LogScreen({ districtId, logId }: { districtId: string; logId: string }) {
  const desk = useLog(districtId, logId)
  const [system] = useUnitSystem()
  const router = useRouter()
  const { post: asked } = useAddress('post')
  const [by, setBy] = useState<string>()
  const now_ms = useNow()
  const { log, world, read, here, names } = desk
  const posts = useMemo(() => postsOf(world), [world])
  const post = posts.find((one) => postKey(one) === asked)
  // What was pressed since the last tick is there already.
  const reached_ms = Math.max(now_ms, here.findLast(({ at_ms }) => at_ms <= now_ms + TICK_MS)?.at_ms ?? 0)
  const asOf_ms = Math.min(reached_ms, log?.ended_ms ?? Infinity, restingAt(here.at(-1)?.at_ms, now_ms))
  const now = useMemo(() => estimateNow(here, world, asOf_ms, log?.dispatched_ms), [here, world, asOf_ms, log?.dispatched_ms])
  const unitIds = useMemo(() => tendersOf(desk), [desk])

  const shell = { ...(desk.districtName !== undefined && { district: { id: districtId, name: desk.districtName } }), screen: 'log' as const }
  if (log && desk.status === 'deleted') return <Shell {...shell}><EmptyState title={say('log.deleted', { name: log.name })}><BringBack docId={logId} /><ButtonLink href={logHref(districtId)} label={say('log.title')} /></EmptyState></Shell>
  if (!log) {
    return (
      <Shell {...shell}>
        <EmptyState title={say(desk.status === 'loading' ? 'log.loading' : desk.status === 'unreachable' ? 'log.unreachable' : 'log.missing')}>
          {desk.status !== 'loading' && <ButtonLink href={logHref(districtId)} label={say('log.title')} />}
        </EmptyState>
      </Shell>
    )
  }
  // In the address, so that the page killed and opened again is at the same post.
  const choose = (key: string | undefined) => { router.replace(`${logHref(districtId, logId)}${key === undefined ? '' : `?post=${encodeURIComponent(key)}`}`, { scroll: false }) }
  return (
    <Shell {...shell}>
      <div className={styles.screen}>
        <header className={styles.head}>
          <h1 className={styles.title}>{log.name}</h1>
          <ChoiceField label={say('log.post')} value={post && postKey(post)} choices={posts.map((one) => ({ value: postKey(one), label: postName(one, names) }))} onCommit={choose} />
          <LogState events={desk.events} />
        </header>
        <div className={styles.columns}>
          <div className={styles.post}>
            {post ? <AtPost desk={desk} post={post} now={now} by={by} unitIds={unitIds} /> : <p className={styles.choose}>{say('log.post.choose')}</p>}
            {post && <UndoLast desk={desk} post={post} system={system} />}
            {post && <TextField label={say('log.by')} value={by} hint={say('log.device.note', { device: logDevice() })} onCommit={setBy} />}
          </div>
          <div className={styles.main}>
            <NowPanel now={now} names={names} system={system} zone={log.zone} {...(asOf_ms < now_ms && { asOf_ms })} />
            <EventList desk={desk} post={post} by={by} system={system} />
          </div>
          <div className={styles.main}>
            <div><ButtonLink href={logHref(districtId, logId, 'review')} label={say('log.files.review')} iconAfter="arrowRight" /></div>
            <Card title={say('log.issues')} level={2} summary={read.issues.length === 0 ? say('log.issues.none') : say('log.issues.count', { count: read.issues.length })}>
              <ul className={styles.rows}>{read.issues.map((one, i) => <li key={i}>{sayIssue(one, names, system)}</li>)}</ul>
            </Card>
            <LogFiles desk={desk} log={log} districtId={districtId} system={system} />
            <LogAbout desk={desk} log={log} />
            <Caution title={say('caution.title')} kinds={['planning-aid']} />
          </div>
        </div>
      </div>
    </Shell>
  )
}

function AtPost({ desk, post, now, by, unitIds }: { desk: LogDesk; post: SiteEvent['post']; now: Now; by: string | undefined; unitIds: readonly string[] }) {
  const isStop = post.kind === 'fill' || post.kind === 'dump'
  return (
    <>
      {isStop && (
        <section className={styles.part} aria-labelledby="log-tenders">
          <h2 id="log-tenders" className={styles.heading}>{say('log.tenders')}</h2>
          <TenderRows desk={desk} post={post} now={now} by={by} unitIds={unitIds} />
          <AddTender desk={desk} post={post} shownIds={unitIds} />
        </section>
      )}
      <Readings desk={desk} post={post} by={by} />
    </>
  )
}

/** So long after the last event nobody logs any more, and nothing can be told of now. */
const RESTS_AFTER_MS = 2 * 3_600_000

const restingAt = (last_ms: number | undefined, now_ms: number): number => (last_ms !== undefined && now_ms - last_ms > RESTS_AFTER_MS ? last_ms : Infinity)

/** The plan's tenders in its order, then those that came beside it. */
function tendersOf({ log, events }: LogDesk): string[] {
  const planned = log?.planned?.plan.tenders.map(({ tenderId }) => tenderId as string) ?? []
  return [...new Set([...planned, ...events.events.flatMap(({ apparatusId }) => apparatusId ?? [])])]
}

/** The time, as often as an estimate changes. */
function useNow(): number {
  const [now_ms, setNow] = useState(() => Date.now())
  useEffect(() => {
    const timer = setInterval(() => { setNow(Date.now()) }, TICK_MS)
    return () => { clearInterval(timer) }
  }, [])
  return now_ms
}
