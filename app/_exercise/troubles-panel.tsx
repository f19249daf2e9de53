'use client'

import { useMemo, useState } from 'react'
import { checkInject, injectFrom, possibleTroubles } from '@/lib/exercise'
import type { Inject } from '@/lib/plan'
import { getClient } from '../_client'
import { listWords, say, sayIssue } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { ChoiceField } from '../_ui/choice-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import { toldWords, troubleWords, triggerWords } from './change-words'
import styles from './exercise.module.css'
import { InjectForm } from './inject-form'
import { useClosures } from './use-closures'
import type { ExerciseDesk } from './use-exercise'

const minutes = ['1', '5', '10', '20'] as const
type When = 'hand' | (typeof minutes)[number]

/** What is still to come; only for who leads. */
export function TroublesPanel({ desk }: { desk: ExerciseDesk }) {
  const { session, exercise, names, clock_s } = desk
  const [system] = useUnitSystem()
  const [chosen, setChosen] = useState<string>()
  const [when, setWhen] = useState<When>('hand')
  const [editedId, setEdited] = useState<string>()
  const bundle = session?.now.world.bundle
  const spec = session?.now.world.spec
  const { closures } = useClosures(bundle, session?.now.world.conditions.closed)
  // What is gone can no longer be struck, and what has begun can no longer come late.
  const possible = useMemo(() => {
    if (!bundle || !spec) return []
    const gone = bundle.plan.tenders.map(({ tenderId }) => tenderId as string).filter((id) => !spec.tenders.some((tender) => tender.id === id))
    return possibleTroubles(bundle, closures).filter(({ subjectIds }) => !subjectIds.some((id) => gone.includes(id)))
  }, [bundle, spec, closures])
  const open = possible.flatMap((what, i) => (what.change.kind !== 'unitLate' || what.when.to_s > clock_s ? [{ value: String(i), label: troubleWords(what, names) }] : []))
  if (!session || !exercise) return null
  const what = chosen === undefined ? undefined : possible[Number(chosen)]
  const keep = (inject: Inject, label: string) => { desk.edit({ kind: 'addItem', collection: 'injects', item: inject }, label) }
  const add = () => {
    if (!what) return
    const made = injectFrom(what, getClient().newId(), troubleWords(what, names).slice(0, 120), Math.ceil(clock_s) + (when === 'hand' ? 0 : Number(when) * 60))
    const inject = { ...made, told: toldWords(what, names) }
    keep(when === 'hand' ? { ...inject, trigger: { kind: 'hand' } } : inject, say('exercise.troubles.add'))
    setChosen(undefined)
  }
  return (
    <Card title={say('exercise.troubles')} level={2} startsOpen summary={session.armed.length === 0 ? say('exercise.troubles.none') : undefined}>
      {!desk.isEnded && session.armed.some(({ trigger }) => trigger.kind !== 'hand') && <p className={styles.quiet}>{say('exercise.troubles.stay')}</p>}
      <ul className={styles.rows}>
        {session.armed.map((inject) => {
          const wrong = checkInject(session, inject)
          return (
            <li key={inject.id} className={styles.line}>
              <span className={styles.words}>
                <strong>{inject.title}</strong> <span className={styles.quiet}>{triggerWords(inject.trigger, names)}</span>
                {wrong && <span className={styles.wrong}> {sayIssue(wrong, names, system)}</span>}
              </span>
              <Button size="s" label={say('exercise.troubles.now')} aria-label={say('exercise.troubles.now.name', { title: inject.title })} onClick={() => { desk.bring(inject) }} />
              <Button size="s" look="quiet" icon="edit" label={say('exercise.inject.edit')} aria-label={say('exercise.inject.edit.name', { title: inject.title })} aria-expanded={editedId === inject.id} onClick={() => { setEdited(editedId === inject.id ? undefined : inject.id) }} />
              <Button size="s" look="quiet" icon="trash" label={say('exercise.troubles.remove')} aria-label={say('exercise.troubles.remove.name', { title: inject.title })} onClick={() => { desk.edit({ kind: 'removeItem', collection: 'injects', id: inject.id }, say('exercise.troubles.remove')) }} />
              {editedId === inject.id && (
                <InjectForm
                  inject={inject} possible={possible} session={session} names={names} system={system} onClose={() => { setEdited(undefined) }}
                  onKeep={(kept) => { keep(kept, say('exercise.inject.edit')); setEdited(undefined) }}
                />
              )}
            </li>
          )
        })}
      </ul>
      <div className={styles.form}>
        <ChoiceField label={say('exercise.troubles.add')} value={chosen} choices={open} onCommit={setChosen} />
        {what?.stuckIds && <p className={styles.wrong}>{say('exercise.troubles.stuck', { tenders: listWords(what.stuckIds.map((id) => names(id) ?? id)) })}</p>}
        <ChoiceField
          label={say('exercise.troubles.when')} value={when} onCommit={(value) => { setWhen(value ?? 'hand') }}
          choices={[{ value: 'hand' as const, label: say('exercise.troubles.when.hand') }, ...minutes.map((value) => ({ value, label: say('exercise.troubles.when.minutes', { count: Number(value) }) }))]}
        />
        <Button size="s" icon="add" label={say('exercise.troubles.add')} disabled={!what} onClick={add} />
      </div>
    </Card>
  )
}
