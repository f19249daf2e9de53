'use client'

import { useRef, useState, type KeyboardEvent } from 'react'
import { findTimeOfDay_s, idFromText, stepsAt } from '@/lib/field-log'
import { siteEventValues, type FieldLog, type SiteEvent, type SiteEventKind } from '@/lib/plan'
import { Shell } from '../_frame/shell'
import { logHref } from '../_links/log-href'
import { say } from '../_text'
import '../_text/areas/log'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { ChoiceField } from '../_ui/choice-field'
import { EmptyState } from '../_ui/empty-state'
import { QuantityField } from '../_ui/quantity-field'
import { TextField } from '../_ui/text-field'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { momentAt } from './clock-time'
import { EventList } from './event-list'
import { LogState } from './log-state'
import styles from './log.module.css'
import { takeBack } from './take-back'
import { postKey, postName, postsOf, useLog, type LogDesk } from './use-log'

/** Clock of the watch that a post's form was written by: one a form, so that a wrong watch is found like a wrong phone. */
const paperDevice = (log: FieldLog, post: SiteEvent['post']): string => `paper-${idFromText(`${log.id} ${postKey(post)}`).slice(0, 8)}`

/** Quick entry from the paper forms by keyboard: a tender, its times in a row, Enter, the next. */
export function PaperEntry({ districtId, logId }: { districtId: string; logId: string }) {
  const desk = useLog(districtId, logId)
  const [system] = useUnitSystem()
  const { log, world, names, districtName, status } = desk
  const [key, setKey] = useState<string>()
  const [by, setBy] = useState<string>()
  const shell = { ...(districtName !== undefined && { district: { id: districtId, name: districtName } }), screen: 'log' as const }
  if (!log) return <Shell {...shell}><EmptyState title={say(status === 'loading' ? 'log.loading' : 'log.missing')} /></Shell>
  const posts = postsOf(world)
  const post = posts.find((one) => postKey(one) === key)
  return (
    <Shell {...shell}>
      <div className={styles.page}>
        <header>
          <h1 className={styles.title}>{say('log.paper.title')}</h1>
          <p className={styles.quiet}>{say('log.paper.lead')}</p>
          <LogState events={desk.events} />
        </header>
        <div className={styles.form}>
          <ChoiceField label={say('log.paper.post')} value={key} choices={posts.map((one) => ({ value: postKey(one), label: postName(one, names) }))} onCommit={setKey} />
          <TextField label={say('log.paper.by')} value={by} onCommit={setBy} />
        </div>
        {!post && <p>{say('log.paper.no-post')}</p>}
        {post && stepsAt(post.kind).length > 0 && <StopRow key={postKey(post)} desk={desk} log={log} post={post} by={by} />}
        {post && <ReadingRow key={`reading ${postKey(post)}`} desk={desk} log={log} post={post} by={by} />}
        <EventList desk={desk} post={post} by={by} system={system} />
        <div><ButtonLink href={logHref(districtId, logId)} label={say('log.form.back')} /></div>
      </div>
    </Shell>
  )
}

type RowProps = { desk: LogDesk; log: FieldLog; post: SiteEvent['post']; by: string | undefined }

function StopRow({ desk, log, post, by }: RowProps) {
  const [tenderId, setTender] = useState<string>()
  const [times, setTimes] = useState<Partial<Record<SiteEventKind, string>>>({})
  const [said, setSaid] = useState('')
  const toast = useToast()
  const form = useRef<HTMLFormElement>(null)
  const steps = stepsAt(post.kind)
  const tenders = desk.world.units.filter(({ isTender }) => isTender)
  const last_ms = desk.events.events.findLast(({ device }) => device === paperDevice(log, post))?.at_ms

  const keep = async () => {
    if (tenderId === undefined) { setSaid(say('log.paper.no-tender')); return }
    const written = steps.flatMap((kind) => { const text = times[kind]?.trim() ?? ''; return text === '' ? [] : [{ kind, timeOfDay_s: findTimeOfDay_s(text) }] })
    if (written.length === 0) { setSaid(say('log.paper.empty')); return }
    if (written.some(({ timeOfDay_s }) => timeOfDay_s === undefined)) { setSaid(say('log.correct.time.wrong')); return }
    let after_ms = last_ms
    const made = await desk.note(written.map(({ kind, timeOfDay_s = 0 }) => {
      const at_ms = momentAt(timeOfDay_s, log.date, log.zone, after_ms)
      after_ms = at_ms
      return { post, kind, apparatusId: tenderId, at_ms, made_ms: Date.now(), device: paperDevice(log, post), entered: 'paper' as const, ...(by !== undefined && { by }) }
    }))
    setSaid('')
    toast({ text: say('log.paper.kept', { count: made.length, tender: desk.names(tenderId) ?? tenderId }), onUndo: () => { void takeBack(desk, made, by) } })
    setTimes({})
    form.current?.querySelector('select')?.focus()
  }
  /** Enter goes on to the next field, and from the last to keeping the row. */
  const next = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key !== 'Enter') return
    event.preventDefault()
    const fields = [...(form.current?.querySelectorAll('input') ?? [])]
    const following = fields[fields.indexOf(event.currentTarget) + 1]
    if (following) following.focus()
    else void keep()
  }
  return (
    <form ref={form} className={styles.paperRow} onSubmit={(event) => { event.preventDefault(); void keep() }}>
      <ChoiceField label={say('log.paper.tender')} value={tenderId} choices={tenders.map(({ id, name }) => ({ value: id, label: name }))} onCommit={setTender} />
      <div className={styles.times}>
        {steps.map((kind) => (
          <label key={kind} className={styles.time}>
            <span>{say('log.event', { kind })}</span>
            <input className={styles.timeInput} inputMode="numeric" autoComplete="off" value={times[kind] ?? ''} onChange={(event) => { setTimes({ ...times, [kind]: event.target.value }) }} onKeyDown={next} />
          </label>
        ))}
      </div>
      <div className={styles.row}>
        <Button type="submit" look="primary" label={say('log.paper.keep')} />
        <p role="status">{said}</p>
      </div>
    </form>
  )
}

const READINGS = ['tankLevel', 'flow', 'pressure'] as const

function ReadingRow({ desk, log, post, by }: RowProps) {
  const [kind, setKind] = useState<(typeof READINGS)[number]>(post.kind === 'dump' ? 'tankLevel' : 'flow')
  const [time, setTime] = useState<string>()
  const [value, setValue] = useState<number>()
  const toast = useToast()
  const rule = siteEventValues[kind]
  const timeOfDay_s = time === undefined ? undefined : findTimeOfDay_s(time)
  const keep = async () => {
    if (timeOfDay_s === undefined || value === undefined) return
    const last_ms = desk.events.events.findLast(({ device }) => device === paperDevice(log, post))?.at_ms
    const made = await desk.note([{ post, kind, value, at_ms: momentAt(timeOfDay_s, log.date, log.zone, last_ms), made_ms: Date.now(), device: paperDevice(log, post), entered: 'paper', ...(by !== undefined && { by }) }])
    toast({ text: say('log.import.taken', { count: made.length }), onUndo: () => { void takeBack(desk, made, by) } })
    setTime(undefined)
    setValue(undefined)
  }
  return (
    <section className={styles.part} aria-labelledby="log-paper-reading">
      <h2 id="log-paper-reading" className={styles.heading}>{say('log.paper.reading')}</h2>
      <ChoiceField label={say('log.paper.read')} value={kind} choices={READINGS.map((one) => ({ value: one, label: say(`log.reading.${one}`) }))} onCommit={(one) => { if (one) setKind(one) }} />
      <TextField label={say('log.correct.time')} value={time} {...(time !== undefined && timeOfDay_s === undefined && { hint: say('log.correct.time.wrong') })} onCommit={setTime} />
      {rule && <QuantityField label={say('log.correct.value')} unit={rule.unit} value={value} min={rule.low} max={rule.high} hasMark={false} onCommit={({ value: typed }) => { setValue(typed) }} />}
      <div><Button label={say('log.paper.keep-reading')} whyNot={timeOfDay_s === undefined || value === undefined ? say('log.paper.first-reading') : undefined} onClick={() => { void keep() }} /></div>
    </section>
  )
}
