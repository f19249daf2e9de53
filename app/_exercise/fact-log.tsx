'use client'

import { useState } from 'react'
import { isRelief } from '@/lib/exercise'
import { findFillSite, type Exercise, type Role } from '@/lib/plan'
import { getClient } from '../_client'
import { drillHref } from '../_links/draft-href'
import { formatClock, say } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Card } from '../_ui/card'
import { TextField } from '../_ui/text-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import { changeWords } from './change-words'
import styles from './exercise.module.css'
import type { ExerciseDesk } from './use-exercise'

/** Where the crew can practise what it takes to get the water back at a fill site; undefined where nothing is drafted. */
function drillOf({ id: exerciseId, bundle, districtId }: Exercise, fillSiteId: string, factId: string): string | undefined {
  const site = findFillSite(bundle, fillSiteId)
  return site?.draftSiteId && site.pumperId ? drillHref({ districtId, draftSiteId: site.draftSiteId, pumperId: site.pumperId }, { exerciseId, factId }) : undefined
}

/** All that came about, newest first, and what people wrote down. */
export function FactLog({ desk, role, canWrite = true }: { desk: ExerciseDesk; role: Role; canWrite?: boolean }) {
  const { exercise, names, clock_s } = desk
  const [system] = useUnitSystem()
  const [text, setText] = useState<string>()
  if (!exercise) return null
  const lines = [
    ...exercise.facts.map(({ id, at_s, cause, by, injectId, change }) => ({
      id, at_s, what: say(cause === 'decision' ? 'exercise.log.decision' : isRelief(change) ? 'exercise.log.relief' : 'exercise.log.inject'), by,
      drill: cause === 'inject' && change.kind === 'fillRate' && change.rateShare === 0 && change.fault !== 'hose' ? drillOf(exercise, change.fillSiteId, id) : undefined,
      told: role === 'facilitator' ? exercise.injects.find((inject) => inject.id === injectId)?.told : undefined,
      text: exercise.injects.find((inject) => inject.id === injectId)?.title ?? changeWords(change, names, system),
    })),
    ...exercise.notes.map(({ id, at_s, by, text: note }) => ({ id, at_s, by, text: note, what: say('exercise.log.note'), drill: undefined, told: undefined })),
  ].sort((a, b) => b.at_s - a.at_s)
  const write = () => {
    if (text === undefined) return
    desk.edit({ kind: 'addItem', collection: 'notes', item: { id: getClient().newId(), at_s: clock_s, by: say(`exercise.seat.${role}`), role, text } }, say('exercise.note.add'))
    setText(undefined)
  }
  return (
    <Card title={say('exercise.log')} level={2} startsOpen summary={lines.length === 0 ? say('exercise.log.none') : undefined}>
      {canWrite && (
        <div className={styles.form}>
          <TextField key={exercise.notes.length} label={say('exercise.note.new')} value={text} maxLength={2000} onCommit={setText} />
          <Button size="s" label={say('exercise.note.add')} whyNot={text === undefined ? say('exercise.note.first') : undefined} onClick={write} />
        </div>
      )}
      <ol className={styles.rows} aria-live="polite">
        {lines.map((line) => (
          <li key={line.id} className={styles.line}>
            <span className={styles.stamp}>{formatClock(line.at_s)}</span>
            <span className={styles.words}><strong>{line.what}</strong> {line.text} {line.by !== '' && <span className={styles.quiet}>{say('exercise.log.by', { by: line.by })}</span>}</span>
            {line.told !== undefined && <p className={styles.told}><span className={styles.quiet}>{say('exercise.inject.read')}</span> {line.told}</p>}
            {line.drill && <ButtonLink size="s" icon="drill" href={line.drill} label={say('exercise.drill')} onClick={() => { if (canWrite && role === 'facilitator' && !desk.isEnded) desk.run(false) }} />}
          </li>
        ))}
      </ol>
    </Card>
  )
}
