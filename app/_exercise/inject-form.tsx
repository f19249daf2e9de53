'use client'

import { useState } from 'react'
import { checkInject, type PossibleTrouble, type Session } from '@/lib/exercise'
import { triggerSchema, type Change, type Inject, type Trigger } from '@/lib/plan'
import { say, sayIssue, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { TextField } from '../_ui/text-field'
import { changeWords, toldWords, troubleWords } from './change-words'
import { ChangeFigure } from './change-figure'
import styles from './exercise.module.css'
import { TriggerFields } from './trigger-fields'

const kinds = ['time', 'level', 'after', 'hand'] as const satisfies readonly Trigger['kind'][]

/** Changes one inject: what comes, how much of it, when, and the words in which it is told. Nothing is kept until it is said so. */
export function InjectForm({ inject, possible, session, names, system, onKeep, onClose }: {
  inject: Inject
  possible: readonly PossibleTrouble[]
  session: Session
  names: NameOf
  system: UnitSystem
  onKeep: (inject: Inject) => void
  onClose: () => void
}) {
  const [draft, setDraft] = useState(inject)
  const [chosen, setChosen] = useState<string>()
  const dumps = session.now.world.spec.dumps
  const wrong = checkInject(session, draft)
  const choose = (value: string | undefined) => {
    const what = value === undefined ? undefined : possible[Number(value)]
    setChosen(value)
    if (!what) return setDraft(inject)
    const title = troubleWords(what, names).slice(0, 120)
    const change: Change = what.change.kind === 'roadClosed' ? { ...what.change, roadId: draft.id, name: title } : what.change
    setDraft({ ...draft, change, title, told: toldWords(what, names) })
  }
  const setKind = (kind: Trigger['kind'] = 'hand') => { setDraft({ ...draft, trigger: beginOf(kind, Math.ceil(session.clock_s / 60 + 1) * 60, dumps[0]?.id) }) }
  return (
    <div className={styles.editor} role="group" aria-label={say('exercise.inject.edit.name', { title: inject.title })}>
      <ChoiceField label={say('exercise.inject.what')} none={say('exercise.inject.as-is', { what: changeWords(inject.change, names, system) })} value={chosen} choices={possible.map((what, i) => ({ value: String(i), label: troubleWords(what, names) }))} onCommit={choose} />
      <ChangeFigure change={draft.change} onChange={(change) => { setDraft({ ...draft, change }) }} />
      <ChoiceField label={say('exercise.troubles.when')} value={draft.trigger.kind} choices={kinds.map((value) => ({ value, label: say(`exercise.inject.when.${value}`) }))} onCommit={setKind} />
      <TriggerFields trigger={draft.trigger} dumps={dumps} names={names} onChange={(trigger) => { setDraft({ ...draft, trigger: triggerSchema.parse(trigger) }) }} />
      <TextField label={say('exercise.inject.title')} value={draft.title} isRequired maxLength={120} onCommit={(title) => { if (title) setDraft({ ...draft, title }) }} />
      <TextField
        label={say('exercise.inject.told')} hint={say('exercise.inject.told.hint')} value={draft.told} isLong maxLength={1000}
        onCommit={(told) => { const { told: _before, ...rest } = draft; setDraft(told === undefined ? rest : { ...rest, told }) }}
      />
      {wrong && <p className={styles.wrong} role="alert">{sayIssue(wrong, names, system)}</p>}
      <div className={styles.asking}>
        <Button size="s" look="primary" label={say('exercise.inject.keep')} whyNot={wrong && sayIssue(wrong, names, system)} onClick={() => { onKeep(draft) }} />
        <Button size="s" look="quiet" label={say('kit.cancel')} onClick={onClose} />
      </div>
    </div>
  )
}

function beginOf(kind: Trigger['kind'], at_s: number, dumpSiteId: string | undefined): Trigger {
  switch (kind) {
    case 'time': return { kind, at_s }
    case 'level': return dumpSiteId === undefined ? { kind: 'hand' } : { kind, dumpSiteId, belowShare: 1 / 3 }
    case 'after': return { kind, event: 'all-supply-ready', delay_s: 600 }
    case 'hand': return { kind }
  }
}
