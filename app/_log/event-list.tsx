'use client'

import { useMemo, useState } from 'react'
import { byTime } from '@/lib/field-log'
import { siteEventKinds, siteEventValues, type SiteEvent, type SiteEventKind } from '@/lib/plan'
import { logDevice } from '../_client'
import { say, type UnitSystem } from '../_text'
import '../_text/areas/log'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { QuantityField } from '../_ui/quantity-field'
import { Segments } from '../_ui/segments'
import { TextField } from '../_ui/text-field'
import { clockTime, deviceTime_ms, typedMoment } from './clock-time'
import { eventWords } from './event-words'
import styles from './log.module.css'
import { shiftsFrom } from './shifts-from'
import { takeBack } from './take-back'
import { postKey, postName, type LogDesk } from './use-log'

/** At most so many lines at a time: a phone draws no thousand. */
const AT_ONCE = 20

/** All that was noted, newest first, what was undone and corrected too; each can be corrected. */
export function EventList({ desk, post, by, system }: { desk: LogDesk; post: SiteEvent['post'] | undefined; by: string | undefined; system: UnitSystem }) {
  const [isOwn, setOwn] = useState(true)
  const [openId, setOpen] = useState<string>()
  const [most, setMost] = useState(AT_ONCE)
  const { events, unsent } = desk.events
  const { effective, clocks } = desk.read
  const gone = useMemo(() => new Map([...effective.retracted.map(({ id }) => [id, 'undone'] as const), ...effective.replaced.map(({ event }) => [event.id, 'corrected'] as const)]), [effective])
  const shown = useMemo(() => {
    const shiftOf_ms = shiftsFrom(clocks, logDevice())
    return events
      .filter((event) => event.retracts === undefined && (!isOwn || !post || postKey(event.post) === postKey(post)))
      .map((event) => ({ event, right_ms: event.at_ms + shiftOf_ms(event.device) }))
      .toSorted((a, b) => b.right_ms - a.right_ms || byTime(b.event, a.event))
  }, [events, clocks, isOwn, post])
  return (
    <section className={styles.part} aria-labelledby="log-events">
      <h2 id="log-events" className={styles.heading}>{say('log.events')}</h2>
      {post && <Segments label={say('log.events.of')} value={isOwn ? 'own' : 'all'} choices={[{ value: 'own' as const, label: say('log.events.own') }, { value: 'all' as const, label: say('log.events.all') }]} onCommit={(value) => { setOwn(value === 'own') }} />}
      {shown.length === 0 && <p>{say('log.events.none')}</p>}
      <ol className={styles.rows}>
        {shown.slice(0, most).map(({ event, right_ms }) => {
          const state = gone.get(event.id) ?? (unsent.has(event.id) ? 'unsent' : undefined)
          const words = eventWords(event, desk.names, system)
          return (
            <li key={event.id} className={styles.event} data-gone={gone.has(event.id)}>
              <span className={styles.stamp}>{clockTime(right_ms, desk.log?.zone)}</span>
              <span className={styles.words}>
                {words}
                {(!isOwn || !post) && <span className={styles.quiet}> {postName(event.post, desk.names)}</span>}
                {right_ms !== event.at_ms && <span className={styles.quiet}> {say('log.events.put-right', { time: clockTime(event.at_ms, desk.log?.zone) })}</span>}
                {state && <span className={styles.quiet}> ({say(`log.events.state.${state}`)})</span>}
              </span>
              {!gone.has(event.id) && <Button className={styles.correct} look="quiet" label={say('log.events.correct')} aria-label={say('log.events.correct.name', { what: words })} aria-expanded={openId === event.id} onClick={() => { setOpen(openId === event.id ? undefined : event.id) }} />}
              {state === 'undone' && <Button className={styles.correct} look="quiet" icon="undo" label={say('kit.bring-back')} aria-label={say('kit.bring-back.name', { name: words })} onClick={() => { void takeBack(desk, effective.undosOf.get(event.id) ?? [], by) }} />}
              {openId === event.id && <Correction desk={desk} event={event} isPutRight={right_ms !== event.at_ms} by={by} onDone={() => { setOpen(undefined) }} />}
            </li>
          )
        })}
      </ol>
      {shown.length > most && <Button label={say('log.events.more', { count: shown.length - most })} onClick={() => { setMost(most + AT_ONCE) }} />}
    </section>
  )
}

/** What stands in place of an event: its time by the clock it was noted by, what happened, how much. */
function Correction({ desk, event, isPutRight, by, onDone }: { desk: LogDesk; event: SiteEvent; isPutRight: boolean; by: string | undefined; onDone: () => void }) {
  const zone = desk.log?.zone
  const [time, setTime] = useState<string | undefined>(clockTime(event.at_ms, zone))
  const [kind, setKind] = useState<SiteEventKind>(event.kind)
  const [value, setValue] = useState(event.value)
  const [isWrong, setWrong] = useState(false)
  const rule = siteEventValues[kind]
  const common = { post: event.post, device: event.device, made_ms: deviceTime_ms(), ...(event.apparatusId !== undefined && { apparatusId: event.apparatusId }), ...(by !== undefined && { by }) }
  const keep = () => {
    const at_ms = time === clockTime(event.at_ms, zone) ? event.at_ms : typedMoment(time ?? '', event.at_ms, zone, deviceTime_ms())
    if (at_ms === undefined) { setWrong(true); return }
    if (rule?.isNeeded && value === undefined) return
    void desk.note([{ ...common, kind, at_ms, replaces: event.id, ...(event.note !== undefined && { note: event.note }), ...(rule && value !== undefined && { value }) }]).then(onDone)
  }
  const undo = () => { void takeBack(desk, [event], by).then(onDone) }
  const kinds = siteEventKinds.filter((one) => one === event.kind || (event.apparatusId !== undefined && !['tankLevel', 'flow', 'pressure', 'primeGot', 'note'].includes(one)))
  return (
    <div className={styles.correction}>
      <TextField label={say('log.correct.time')} value={time} {...(isWrong ? { hint: say('log.correct.time.wrong') } : isPutRight && { hint: say('log.correct.time.own') })} onCommit={(typed) => { setTime(typed); setWrong(false) }} />
      {kinds.length > 1 && <ChoiceField label={say('log.correct.kind')} value={kind} choices={kinds.map((one) => ({ value: one, label: say('log.event', { kind: one }) }))} onCommit={(one) => { setKind(one ?? event.kind) }} />}
      {rule && <QuantityField label={say('log.correct.value')} unit={rule.unit} value={value} min={rule.low} max={rule.high} hasMark={false} onCommit={({ value: typed }) => { setValue(typed) }} />}
      <div className={styles.row}>
        <Button look="primary" label={say('log.correct.keep')} onClick={keep} />
        <Button look="danger" label={say(event.replaces === undefined ? 'log.correct.undo' : 'log.correct.back')} onClick={undo} />
        <Button look="quiet" label={say('log.correct.leave')} onClick={onDone} />
      </div>
    </div>
  )
}
