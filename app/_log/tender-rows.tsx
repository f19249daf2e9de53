'use client'

import { useRef, useState } from 'react'
import { expectedNext, stepsAt, type Now, type TimedEvent } from '@/lib/field-log'
import type { SiteEvent, SiteEventKind } from '@/lib/plan'
import { say } from '../_text'
import '../_text/areas/log'
import { Button } from '../_ui/button'
import { clockTime, deviceTime_ms } from './clock-time'
import styles from './log.module.css'
import type { LogDesk } from './use-log'

/** A second press on one row within this time is the same finger still: the button under it says something else by then. */
const SAME_PRESS_MS = 1000

type Props = { desk: LogDesk; post: SiteEvent['post']; now: Now; by: string | undefined; unitIds: readonly string[] }

/** One large button a tender: what is to be seen of it next. The rows keep their places, so that a finger finds them. */
export function TenderRows({ desk, post, now, by, unitIds }: Props) {
  if (unitIds.length === 0) return <p>{say('log.tenders.none')}</p>
  return (
    <ul className={styles.tenders}>
      {unitIds.map((id) => <TenderRow key={id} id={id} desk={desk} post={post} now={now} by={by} />)}
    </ul>
  )
}

function TenderRow({ id, desk, post, now, by }: Omit<Props, 'unitIds'> & { id: string }) {
  const [isOpen, setOpen] = useState(false)
  const [isKeeping, setKeeping] = useState(false)
  const pressed = useRef(0)
  const name = desk.names(id) ?? id
  const last = lastOf(desk.here, id)
  const isHere = last?.post.siteId === post.siteId && last?.post.kind === post.kind
  const next = expectedNext(post.kind, isHere ? last?.kind : undefined)

  const press = async (kind: SiteEventKind) => {
    const at_ms = deviceTime_ms()
    if (at_ms - pressed.current < SAME_PRESS_MS) return
    pressed.current = at_ms
    setKeeping(true)
    await desk.note([{ post, kind, apparatusId: id, at_ms, ...(by !== undefined && { by }) }])
    setKeeping(false)
    setOpen(false)
  }
  return (
    <li className={styles.tender}>
      <h3 className={styles.tenderName}>{name}</h3>
      <p className={styles.quiet} aria-live="polite">{whereabouts({ id, last, isHere, now, desk })}</p>
      {next && (
        <button type="button" className={styles.big} aria-label={`${name}: ${say('log.event', { kind: next })}`} disabled={isKeeping} onClick={() => { void press(next) }}>
          {say('log.event', { kind: next })}
        </button>
      )}
      <Button className={styles.otherButton} look="quiet" label={say('log.other')} aria-label={`${name}: ${say('log.other')}`} aria-expanded={isOpen} iconAfter="chevron" onClick={() => { setOpen(!isOpen) }} />
      {isOpen && (
        <div className={styles.others}>
          {stepsAt(post.kind).filter((kind) => kind !== next).map((kind) => (
            <Button key={kind} className={styles.other} label={say('log.event', { kind })} aria-label={`${name}: ${say('log.event', { kind })}`} onClick={() => { void press(kind) }} />
          ))}
        </div>
      )}
    </li>
  )
}

const lastOf = (events: readonly TimedEvent[], id: string): TimedEvent | undefined => events.findLast(({ apparatusId, kind }) => apparatusId === id && kind !== 'note')

function whereabouts({ id, last, isHere, now, desk }: { id: string; last: TimedEvent | undefined; isHere: boolean; now: Now; desk: LogDesk }): string {
  const zone = desk.log?.zone
  const short = (at_ms: number) => clockTime(at_ms, zone, { hasSeconds: false })
  const road = now.road.find(({ apparatusId }) => apparatusId === id)
  if (!last) return say('log.tender.unseen')
  if (isHere) return say('log.tender.at', { what: say('log.event', { kind: last.kind }), time: clockTime(last.at_ms, zone) })
  if (road?.expected_ms !== undefined) return say(road.isOverdue ? 'log.tender.overdue' : 'log.tender.coming', { time: short(road.expected_ms) })
  return say('log.tender.elsewhere', { what: say('log.event', { kind: last.kind }), site: desk.names(last.post.siteId ?? '') ?? say(`log.post.${last.post.kind}.short`), time: short(last.at_ms) })
}
