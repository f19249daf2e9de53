'use client'

import { useState } from 'react'
import { changeWords } from '../_exercise/change-words'
import { formatClock, say, type NameOf } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { TextField } from '../_ui/text-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import type { OutboxState } from './act-outbox'
import type { SeatState } from './seat-state'
import styles from './seat.module.css'

type Props = { state: SeatState; sending: OutboxState; names: NameOf; onNote: (text: string) => void; onDismiss: (id: string) => void }

/** What this seat heard, decided and wrote, newest first; above it what is still on its way to the station. */
export function SeatLog({ state, sending, names, onNote, onDismiss }: Props) {
  const [system] = useUnitSystem()
  const [text, setText] = useState<string>()
  const lines = [
    ...state.facts.map(({ id, at_s, cause, by, change, told }) => ({ id, at_s, by, text: told ?? changeWords(change, names, system), what: say(cause === 'inject' ? 'exercise.log.inject' : 'exercise.log.decision') })),
    ...state.notes.map(({ id, at_s, text: note }) => ({ id, at_s, by: '', text: note, what: say('exercise.log.note') })),
  ].sort((a, b) => b.at_s - a.at_s)
  const wordsOf = (act: OutboxState['waiting'][number]['act']) => (act.kind === 'note' ? act.text : changeWords(act.change, names, system))
  const write = () => {
    if (text === undefined) return
    onNote(text)
    setText(undefined)
  }
  return (
    <>
      <div className={styles.form}>
        <TextField key={state.notes.length + sending.waiting.length} label={say('exercise.note.new')} hint={say('exercise.seat.note.hint')} value={text} maxLength={2000} onCommit={setText} />
        <Button size="s" label={say('exercise.note.add')} whyNot={text === undefined ? say('exercise.note.first') : undefined} onClick={write} />
      </div>
      <ul className={styles.rows} aria-live="polite" aria-label={say('exercise.seat.on-its-way')}>
        {sending.waiting.map(({ act }) => <li key={act.id} className={styles.waiting}>{say(sending.isKept ? 'exercise.seat.waiting' : 'exercise.seat.waiting.window', { what: wordsOf(act) })}</li>)}
        {sending.refused.map(({ act, sentence }) => (
          <li key={act.id} className={styles.refused}>
            <span className={styles.words}>{say('exercise.seat.refused', { what: wordsOf(act), reason: sentence })}</span>
            <Button size="s" look="quiet" label={say('exercise.seat.refused.seen')} onClick={() => { onDismiss(act.id) }} />
          </li>
        ))}
      </ul>
      <ol className={styles.rows} aria-live="polite" aria-label={say('exercise.log')}>
        {lines.map((line) => (
          <li key={line.id} className={styles.line}>
            <span className={styles.stamp}>{formatClock(line.at_s)}</span>
            <span className={styles.words}><strong>{line.what}</strong> {line.text} {line.by !== '' && <span className={styles.quiet}>{say('exercise.log.by', { by: line.by })}</span>}</span>
          </li>
        ))}
      </ol>
      {lines.length === 0 && <p className={styles.quiet}>{say('exercise.log.none')}</p>}
    </>
  )
}
