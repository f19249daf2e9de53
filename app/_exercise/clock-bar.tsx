'use client'

import { useId, useState } from 'react'
import { clockSpeeds } from '@/lib/plan'
import { nextMoment, type NextMoment } from '@/lib/exercise'
import { exerciseHref } from '../_links/exercise-href'
import { formatClock, say, type NameOf } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Segments } from '../_ui/segments'
import styles from './exercise.module.css'
import type { ExerciseDesk } from './use-exercise'

/** What the clock was set forward to, in words. */
function momentWords(next: NextMoment, names: NameOf): string {
  if (next.kind === 'trouble') return say('exercise.next.trouble', { title: next.title })
  if (next.kind === 'other') return say('exercise.next.other')
  const { siteId } = next
  return siteId === undefined ? say(`exercise.next.${next.kind}`) : say('exercise.next.at', { what: say(`exercise.next.${next.kind}`), site: names(siteId) ?? siteId })
}

/** The clock of an exercise: start, stop, pace, the next event, the end. */
export function ClockBar({ desk, districtId, leads }: { desk: ExerciseDesk; districtId: string; leads: boolean }) {
  const { exercise, session, clock_s, isEnded } = desk
  const [isAsking, setAsking] = useState(false)
  const [reached, setReached] = useState<NextMoment>()
  const whyId = useId()
  if (!exercise) return null
  const { clock } = exercise
  const isRunning = clock?.isRunning === true && !isEnded
  const factor = String(clock?.speedFactor ?? 1)
  return (
    <div className={styles.clock} role="group" aria-label={say('exercise.clock')}>
      <div className={styles.clockNow}>
        <p className={styles.time}><span role="timer" aria-label={say('exercise.clock')}>{formatClock(clock_s)}</span> <span className={styles.quiet}>{say('exercise.clock.since')}</span></p>
        {leads && !isEnded && (
          <Button
            look="primary" icon={isRunning ? 'pause' : 'play'} label={say(isRunning ? 'exercise.pause' : clock_s > 0 ? 'exercise.go-on' : 'exercise.start')}
            onClick={() => { desk.run(!isRunning) }}
          />
        )}
      </div>
      <div className={styles.clockMore}>
        <p role="status" className={styles.reached}>{leads && !isEnded && !isRunning && reached && Math.abs(reached.at_s - clock_s) < 1 ? momentWords(reached, desk.names) : ''}</p>
        {isEnded && <p>{say('exercise.ended', { time: formatClock(clock_s) })}</p>}
        {leads && !isEnded && (
          <>
            <Segments
              label={say('exercise.pace')} value={factor}
              choices={clockSpeeds.map((speed) => ({ value: String(speed), label: say('exercise.pace.factor', { factor: String(speed) }) }))}
              onCommit={(value) => { desk.run(isRunning, Number(value)) }}
            />
            <Button label={say('exercise.next')} disabled={isRunning || !session} aria-describedby={isRunning ? whyId : undefined} onClick={() => { const next = session && nextMoment(session); setReached(next); if (next) desk.jump(next.at_s) }} />
            {isRunning && <span id={whyId} className={styles.quiet}>{say('exercise.next.running')}</span>}
            {isAsking
              ? (
                <span className={styles.asking} role="group" aria-label={say('exercise.end')}>
                  <span className={styles.quiet}>{say('exercise.end.text')}</span>
                  <Button size="s" look="danger" label={say('exercise.end.sure')} onClick={() => { setAsking(false); desk.end() }} />
                  <Button size="s" look="quiet" label={say('exercise.end.not')} onClick={() => { setAsking(false) }} />
                </span>
              )
              : <Button look="quiet" label={say('exercise.end')} onClick={() => { setAsking(true) }} />}
          </>
        )}
        <ButtonLink size="s" href={exerciseHref(districtId, exercise.id, 'debrief')} label={say('exercise.debrief')} iconAfter="arrowRight" />
      </div>
    </div>
  )
}
