'use client'

import { useMemo, useState } from 'react'
import { effectsOf, readSession, sessionChart, sessionShortfall, tendersOf } from '@/lib/exercise'
import { shortNames } from '@/lib/plan'
import { StringChart } from '../_charts/string-chart'
import { useDistrict } from '../_client'
import { BringBack } from '../_frame/bring-back'
import { Shell } from '../_frame/shell'
import { exerciseHref } from '../_links/exercise-href'
import { formatClock, formatDay, formatMinutes, formatQuantity, formatToday, say } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Caution } from '../_ui/caution'
import { DataTable } from '../_ui/data-table'
import { EmptyState } from '../_ui/empty-state'
import { FigureTile } from '../_ui/figure-tile'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useBestAnswers, type BestAsk } from '../_worker/use-best-answers'
import { BestPart, recoveredWords } from './best-part'
import { changeWords } from './change-words'
import styles from './exercise.module.css'
import { factCodes } from './fact-codes'
import { FactLog } from './fact-log'
import { Timeline } from './timeline'
import { useExercise } from './use-exercise'

/** Going through an exercise: what was missed, what each thing that came about did to the water, what could have been decided, and what people wrote down. */
export function DebriefScreen({ districtId, exerciseId }: { districtId: string; exerciseId: string }) {
  const desk = useExercise(exerciseId, false)
  const { exercise, session, names, status, isEnded } = desk
  const [system] = useUnitSystem()
  const district = useDistrict(districtId).doc
  const clock_s = Math.floor(session?.clock_s ?? 0)
  // What is worked out hangs on these alone: neither a tick within a second nor a note works it out anew.
  const { bundle, facts: written, endedAt_s } = exercise ?? {}
  const { now, past } = session ?? {}
  const facts = useMemo(() => written?.toSorted((a, b) => a.at_s - b.at_s) ?? [], [written])
  const codes = useMemo(() => factCodes(facts), [facts])
  const gone = useMemo(() => {
    if (!now || !past || !bundle) return undefined
    const still = { now, past, facts, armed: [], clock_s: Math.max(clock_s, now.from_s) }
    const record = readSession(still)
    return {
      counted_s: Math.min(still.clock_s, now.scenario.demand.countFrom_s),
      record, chart: sessionChart(still, record), marks: shortNames(tendersOf(now.world.bundle)), shortfall: sessionShortfall(still, record),
      rows: effectsOf(bundle, facts, still.clock_s).map((effect, i) => ({ effect, fact: facts[i]! })),
    }
  }, [now, past, bundle, facts, clock_s])
  const [looked, setLooked] = useState<BestAsk>()
  const whole = useMemo(() => (bundle && endedAt_s !== undefined ? { bundle, facts, to_s: endedAt_s } : undefined), [bundle, facts, endedAt_s])
  const best = useBestAnswers(whole ?? looked)
  const shell = { ...(district && { district: { id: districtId, name: district.name } }), screen: 'exercise' as const }
  if (exercise && status === 'deleted') return <Shell {...shell}><EmptyState title={say('exercise.deleted', { name: exercise.name })}><BringBack docId={exerciseId} /><ButtonLink href={exerciseHref(districtId)} label={say('exercise.title')} /></EmptyState></Shell>
  if (!exercise || !gone) {
    return (
      <Shell {...shell}>
        <EmptyState title={say(status === 'loading' ? 'exercise.loading' : exercise ? 'exercise.broken' : 'exercise.missing')}>
          <ButtonLink href={exerciseHref(districtId)} label={say('exercise.title')} />
        </EmptyState>
      </Shell>
    )
  }
  const end_s = Math.max(600, clock_s)
  const gallons = (volume_gal: number) => formatQuantity(Math.abs(volume_gal), 'gal', system, { style: 'headline' })
  const signed = (amount: number, words: string) => (Math.abs(amount) < 1 ? say('exercise.debrief.same') : say(amount < 0 ? 'exercise.debrief.less' : 'exercise.debrief.more', { amount: words }))
  // A trouble after which less is missing looks like a help unless the reason stands beside it.
  const markOf = ({ effect, fact }: (typeof gone.rows)[number]) => (effect.isTiming ? 'timing' : fact.cause === 'inject' && effect.missing_gal <= -1 ? 'kept' : undefined)
  const marked = (row: (typeof gone.rows)[number]) => {
    const words = signed(row.effect.missing_gal, gallons(row.effect.missing_gal))
    const mark = markOf(row)
    return mark ? say(`exercise.debrief.${mark}`, { amount: words }) : words
  }
  const marks = (['timing', 'kept'] as const).filter((mark) => gone.rows.some((row) => markOf(row) === mark))
  return (
    <Shell {...shell}>
      <div className={styles.page}>
        <header className={styles.head}>
          <h1 className={styles.title}>{say('exercise.debrief.title', { name: exercise.name })}</h1>
          <ButtonLink size="s" icon="arrowLeft" href={exerciseHref(districtId, exerciseId)} label={say('exercise.back')} />
          <Button size="s" icon="print" label={say('exercise.debrief.print')} onClick={() => { print() }} />
        </header>
        <p className={styles.quiet}>{say(isEnded ? 'exercise.debrief.ended' : 'exercise.debrief.running', { time: formatClock(clock_s), plan: exercise.bundle.plan.name, day: exercise.clock ? formatDay(exercise.clock.setAt) : formatToday() })}</p>
        <div className={styles.figures}>
          <FigureTile label={say('exercise.debrief.short')} value={formatMinutes(gone.shortfall.short_s, 'up')} note={say('exercise.debrief.short.note')} look={gone.shortfall.short_s > 0 ? 'amber' : 'water'} />
          <FigureTile label={say('exercise.debrief.missing')} value={gallons(gone.shortfall.missing_gal)} note={say('exercise.debrief.missing.note')} />
          <FigureTile label={say('exercise.debrief.count')} value={String(gone.rows.length)} note={say('exercise.debrief.count.note')} />
        </div>
        <div className={joinClasses(styles.part, styles.together)}>
          <h2 className={styles.heading}>{say('exercise.timeline')}</h2>
          <div className={styles.wide}><Timeline record={gone.record} facts={facts} codes={codes} end_s={end_s} counted_s={gone.counted_s} names={names} /></div>
        </div>
        <div className={styles.part}>
          <h2 className={styles.heading}>{say('exercise.debrief.facts')}</h2>
          <p className={styles.quiet}>{say('exercise.debrief.facts.text')}</p>
          <DataTable
            caption={say('exercise.debrief.facts')} isCaptionHidden rows={gone.rows} rowKey={({ fact }) => fact.id} empty={say('exercise.debrief.nothing')}
            columns={[
              { key: 'what', head: say('exercise.debrief.what'), cell: ({ fact }) => `${codes.get(fact.id) ?? ''} ${exercise.injects.find(({ id }) => id === fact.injectId)?.title ?? changeWords(fact.change, names, system)}${fact.by === '' ? '' : ` (${fact.by})`}` },
              { key: 'when', head: say('exercise.debrief.when'), isNumber: true, cell: ({ fact }) => formatClock(fact.at_s), sortBy: ({ fact }) => fact.at_s },
              { key: 'short', head: say('exercise.debrief.more-short'), isNumber: true, cell: ({ effect }) => signed(effect.short_s, formatMinutes(Math.abs(effect.short_s))), sortBy: ({ effect }) => effect.short_s },
              { key: 'missing', head: say('exercise.debrief.more-missing'), isNumber: true, cell: marked, sortBy: ({ effect }) => effect.missing_gal },
              { key: 'back', head: say('exercise.debrief.recovered'), isNumber: true, cell: ({ effect }) => (Math.abs(effect.short_s) < 1 && Math.abs(effect.missing_gal) < 1 ? say('exercise.debrief.recovered.same') : recoveredWords(effect.recovered_s)) },
            ]}
          />
          {marks.map((mark) => <p key={mark} className={styles.quiet}>{say(`exercise.debrief.${mark}.why`)}</p>)}
        </div>
        {gone.rows.length > 0 && <BestPart best={best} exercise={exercise} facts={facts} codes={codes} names={names} system={system} onLook={() => { setLooked({ bundle: exercise.bundle, facts, to_s: clock_s }) }} />}
        <div className={joinClasses(styles.part, styles.together)}>
          <h2 className={styles.heading}>{say('exercise.chart')}</h2>
          <div className={styles.wide}><StringChart chart={gone.chart} names={names} shared_s={end_s} marks={gone.marks} /></div>
        </div>
        <FactLog desk={desk} role="facilitator" />
        <Caution title={say('caution.title')} kinds={['planning-aid', 'back-up-prime']} />
      </div>
    </Shell>
  )
}
