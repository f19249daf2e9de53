'use client'

import { useMemo, useState } from 'react'
import { injectFrom, possibleTroubles } from '@/lib/exercise'
import { getClient } from '../_client'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { ChoiceField } from '../_ui/choice-field'
import { troubleWords, triggerWords } from './change-words'
import styles from './exercise.module.css'
import type { ExerciseDesk } from './use-exercise'

const minutes = ['1', '5', '10', '20'] as const
type When = 'hand' | (typeof minutes)[number]

/** What is still to come; only for who leads. */
export function TroublesPanel({ desk }: { desk: ExerciseDesk }) {
  const { session, exercise, names, clock_s } = desk
  const [chosen, setChosen] = useState<string>()
  const [when, setWhen] = useState<When>('hand')
  const bundle = session?.now.world.bundle
  const spec = session?.now.world.spec
  // What is gone can no longer be struck, and what has begun can no longer come late.
  const possible = useMemo(() => {
    if (!bundle || !spec) return []
    const gone = bundle.plan.tenders.map(({ tenderId }) => tenderId as string).filter((id) => !spec.tenders.some((tender) => tender.id === id))
    return possibleTroubles(bundle).map((what, i) => ({ what, value: String(i), label: troubleWords(what, names) })).filter(({ what }) => !what.subjectIds.some((id) => gone.includes(id)))
  }, [bundle, spec, names])
  const open = possible.filter(({ what }) => what.change.kind !== 'unitLate' || what.when.to_s > clock_s)
  if (!session || !exercise) return null
  const what = possible.find(({ value }) => value === chosen)?.what
  const add = () => {
    if (!what) return
    const inject = injectFrom(what, getClient().newId(), troubleWords(what, names).slice(0, 120), Math.ceil(clock_s) + (when === 'hand' ? 0 : Number(when) * 60))
    desk.edit({ kind: 'addItem', collection: 'injects', item: when === 'hand' ? { ...inject, trigger: { kind: 'hand' } } : inject }, say('exercise.troubles.add'))
    setChosen(undefined)
  }
  return (
    <Card title={say('exercise.troubles')} level={2} startsOpen summary={session.armed.length === 0 ? say('exercise.troubles.none') : undefined}>
      <ul className={styles.rows}>
        {session.armed.map((inject) => (
          <li key={inject.id} className={styles.line}>
            <span className={styles.words}><strong>{inject.title}</strong> <span className={styles.quiet}>{triggerWords(inject.trigger, names)}</span></span>
            <Button size="s" label={say('exercise.troubles.now')} aria-label={say('exercise.troubles.now.name', { title: inject.title })} onClick={() => { desk.bring(inject) }} />
            <Button size="s" look="quiet" icon="trash" label={say('exercise.troubles.remove')} aria-label={say('exercise.troubles.remove.name', { title: inject.title })} onClick={() => { desk.edit({ kind: 'removeItem', collection: 'injects', id: inject.id }, say('exercise.troubles.remove')) }} />
          </li>
        ))}
      </ul>
      <div className={styles.form}>
        <ChoiceField label={say('exercise.troubles.add')} value={chosen} choices={open} onCommit={setChosen} />
        <ChoiceField
          label={say('exercise.troubles.when')} value={when} onCommit={(value) => { setWhen(value ?? 'hand') }}
          choices={[{ value: 'hand' as const, label: say('exercise.troubles.when.hand') }, ...minutes.map((value) => ({ value, label: say('exercise.troubles.when.minutes', { count: Number(value) }) }))]}
        />
        <Button size="s" icon="add" label={say('exercise.troubles.add')} disabled={!what} onClick={add} />
      </div>
    </Card>
  )
}
