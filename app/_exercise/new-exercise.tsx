'use client'

import { useRouter } from 'next/navigation'
import { useMemo, useState } from 'react'
import { difficulties, drawInjects, injectFrom, isSession, startSession } from '@/lib/exercise'
import type { Exercise } from '@/lib/plan'
import { getClient, type DocumentEntry } from '../_client'
import { exerciseHref } from '../_links/exercise-href'
import { usePlanDesk } from '../_plan/use-plan-desk'
import { formatClock, formatToday, say, sayIssue } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { ChoiceField } from '../_ui/choice-field'
import { screenHref } from '../_links/screens'
import { Segments } from '../_ui/segments'
import { useAddress } from '../_ui/use-address'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { toldWords, troubleWords } from './change-words'
import styles from './exercise.module.css'
import { useClosures } from './use-closures'

const hardnesses = [...difficulties, 'none'] as const
type Hardness = (typeof hardnesses)[number]

/** Makes an exercise of a plan, with troubles drawn for it. */
export function NewExercise({ districtId, plans }: { districtId: string; plans: readonly DocumentEntry[] }) {
  const { plan: asked } = useAddress('plan')
  const [chosen, setChosen] = useState<string | undefined>(asked)
  const planId = plans.some(({ id }) => id === chosen) ? chosen : plans[0]?.id
  return (
    <section className={styles.part} aria-labelledby="exercise-new">
      <h2 id="exercise-new" className={styles.heading}>{say('exercise.new')}</h2>
      {planId === undefined
        ? <><p>{say('exercise.no-plans')}</p><ButtonLink href={screenHref('plan', districtId)} label={say('plan.title')} iconAfter="arrowRight" /></>
        : (
          <>
            <ChoiceField label={say('exercise.plan')} value={planId} choices={plans.map(({ id, name }) => ({ value: id, label: name }))} onCommit={setChosen} />
            <OfPlan key={planId} districtId={districtId} planId={planId} />
          </>
        )}
    </section>
  )
}

function OfPlan({ districtId, planId }: { districtId: string; planId: string }) {
  const router = useRouter()
  const toast = useToast()
  const [system] = useUnitSystem()
  const { bundle, plan, answer, names } = usePlanDesk(districtId, planId)
  const [hardness, setHardness] = useState<Hardness>('easy')
  const [seed, setSeed] = useState(1)
  // The exercise keeps the ways as they were found, so that it runs without the roads.
  const whole = useMemo(() => (bundle && answer.result ? { ...bundle, legs: [...answer.legs] } : undefined), [bundle, answer.result, answer.legs])
  const begun = useMemo(() => whole && startSession(whole), [whole])
  const { closures, isReady } = useClosures(whole)
  const drawn = useMemo(() => (whole && isReady && begun && isSession(begun) && hardness !== 'none' ? drawInjects(whole, seed, hardness, closures) : []), [whole, begun, hardness, seed, closures, isReady])

  if (!whole || !plan || !begun || !isReady) return <p role="status">{say('exercise.make.waiting')}</p>
  if (!isSession(begun)) return <p role="status">{say('exercise.make.blocked', { reason: begun.map((one) => sayIssue(one, names, system)).join(' ') })}</p>

  const make = async () => {
    const client = getClient()
    const exercise: Exercise = {
      format: 'millrace-exercise', version: 1, id: client.newId(), districtId, bundle: whole, facts: [], notes: [],
      name: say('exercise.name', { plan: plan.name, day: formatToday() }).slice(0, 120),
      injects: drawn.map(({ what, at_s }) => ({ ...injectFrom(what, client.newId(), troubleWords(what, names).slice(0, 120), at_s), told: toldWords(what, names) })),
    }
    const refused = await client.create(exercise, { label: say('exercise.make') })
    if (refused) toast({ text: sayIssue(refused, names, system), look: 'danger' })
    else router.push(exerciseHref(districtId, exercise.id))
  }
  return (
    <>
      <Segments label={say('exercise.hardness')} value={hardness} choices={hardnesses.map((value) => ({ value, label: say(`exercise.hardness.${value}`) }))} onCommit={setHardness} />
      <details className={styles.drawn}>
        <summary>{say('exercise.drawn')}</summary>
        <p className={styles.quiet}>{say('exercise.hide')}</p>
        {drawn.length === 0
          ? <p>{say('exercise.drawn.none')}</p>
          : <ol className={styles.guide}>{drawn.map(({ what, at_s }) => <li key={`${what.trouble} ${at_s}`}><strong>{formatClock(at_s)}</strong> {troubleWords(what, names)}</li>)}</ol>}
        {hardness !== 'none' && <Button size="s" label={say('exercise.again')} onClick={() => { setSeed(seed + 1) }} />}
      </details>
      <div><Button look="primary" label={say('exercise.make')} onClick={() => { void make() }} /></div>
    </>
  )
}
