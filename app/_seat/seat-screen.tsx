'use client'

import dynamic from 'next/dynamic'
import { useCallback } from 'react'
import type { Change } from '@/lib/plan'
import { mintId } from '../_client/mint-id'
import { TenderTable } from '../_exercise/tender-table'
import { useRunningClock } from '../_exercise/use-running-clock'
import { WaterFigures } from '../_exercise/water-figures'
import { LiveMark } from '../_live/live-mark'
import { FIRE_GROUND } from '@/lib/plan'
import { formatClock, say, type NameOf } from '../_text'
import '../_text/areas/exercise'
import '../_text/areas/devices'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Card } from '../_ui/card'
import { Caution } from '../_ui/caution'
import { DisplayChoice } from '../_ui/display-choice'
import { EmptyState } from '../_ui/empty-state'
import { useUnitSystem } from '../_ui/unit-system-context'
import { Wordmark } from '../_ui/wordmark'
import { SeatDecide } from './seat-decide'
import { SeatLog } from './seat-log'
import styles from './seat.module.css'
import { useSeat, type SeatDesk } from './use-seat'

const SeatMap = dynamic(() => import('./seat-map').then(({ SeatMap: map }) => map), { ssr: false })

/** One seat of an exercise on a phone or tablet: what its place knows, and what it decides. */
export function SeatScreen() {
  const desk = useSeat()
  const { live, state } = desk
  return (
    <div className={styles.frame}>
      <header className={styles.bar}>
        <Wordmark />
        <span className={styles.end}><LiveMark state={live} /><DisplayChoice /></span>
      </header>
      <main className={styles.screen}>
        {live.kind === 'refused' || state.isGone
          ? <EmptyState title={say(state.isGone ? 'exercise.missing' : 'exercise.seat.closed')} text={say('exercise.seat.closed.text')}><ButtonLink href="/join" label={say('devices.join.title')} /><Button label={say('exercise.seat.again')} onClick={() => { location.reload() }} /></EmptyState>
          : state.info ? <Seated desk={desk} info={state.info} /> : <EmptyState title={say('exercise.live.catching-up')} />}
      </main>
    </div>
  )
}

function Seated({ desk, info }: { desk: SeatDesk; info: NonNullable<SeatDesk['state']['info']> }) {
  const { state, live, outbox, sending } = desk
  const { answer, clock, endedAt_s } = state
  const [system] = useUnitSystem()
  const names: NameOf = useCallback((id) => info.names[id] ?? (id === FIRE_GROUND ? say('plan.fire-ground') : undefined), [info.names])
  const running_s = useRunningClock(clock)
  // What nobody tells this seat, it does not know: cut off, the clock stands where it was last heard.
  const clock_s = endedAt_s ?? (live.kind === 'live' ? Math.max(running_s, clock ? 0 : answer?.clock_s ?? 0) : answer?.clock_s ?? running_s)
  const isOpen = clock !== undefined && endedAt_s === undefined
  const place = info.siteId === undefined ? say(`exercise.seat.${info.role}`) : say('exercise.seat.post', { post: say(`exercise.seat.${info.role}`), site: names(info.siteId) ?? info.siteId })
  const standing = endedAt_s !== undefined ? say('exercise.ended', { time: formatClock(endedAt_s) }) : !clock ? say('exercise.seat.not-begun') : !clock.isRunning ? say('exercise.seat.stands') : clock.speedFactor > 1 ? say('exercise.seat.pace', { factor: String(clock.speedFactor) }) : say('exercise.clock.since')
  return (
    <>
      <div className={styles.head}>
        <h1 className={styles.title}>{place}</h1>
        <p className={styles.quiet}>{info.exercise}</p>
        <p className={styles.time}><span role="timer" aria-label={say('exercise.clock')}>{formatClock(clock_s)}</span> <span className={styles.quiet}>{standing}</span></p>
      </div>
      <div className={styles.columns}>
        <div className={styles.part}>
          {answer && <WaterFigures seat={answer.view} names={names} system={system} />}
          {info.map && <section className={styles.map} aria-label={say('exercise.map')}><SeatMap map={info.map} points={answer?.points} names={names} /></section>}
          {answer && answer.view.tenders.length > 0 && <TenderTable tenders={answer.view.tenders} names={names} system={system} />}
          {answer && info.siteId !== undefined && answer.view.tenders.length === 0 && <p className={styles.quiet}>{say('exercise.seat.no-tenders')}</p>}
        </div>
        <div className={styles.part}>
          <Card title={say('exercise.decisions')} level={2} startsOpen>
            <SeatDecide info={info} names={names} isOpen={isOpen} onDecide={(change: Change) => { outbox?.add({ kind: 'decide', id: mintId(), change }) }} />
          </Card>
          <Card title={say('exercise.log')} level={2} startsOpen>
            <SeatLog state={state} sending={sending} names={names} onNote={(text) => { outbox?.add({ kind: 'note', id: mintId(), text }) }} onDismiss={(id) => { outbox?.dismiss(id) }} />
          </Card>
          <Caution title={say('caution.title')} kinds={['planning-aid']} />
        </div>
      </div>
    </>
  )
}
