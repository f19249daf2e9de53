'use client'

import { useState } from 'react'
import { say } from '../_text'
import '../_text/areas/exercise'
import { Card } from '../_ui/card'
import { ChoiceField } from '../_ui/choice-field'
import { TextField } from '../_ui/text-field'
import { LayDecision } from './decide/lay-decision'
import { SiteForm, siteKinds, type SiteDecision } from './decide/site-form'
import { usePlanDecision } from './decide/use-plan-decision'
import { WordForm, wordKinds, type WordKind } from './decide/word-form'
import styles from './exercise.module.css'
import type { ExerciseDesk } from './use-exercise'
import type { Placing } from './use-placing'

const kinds = [...wordKinds, ...siteKinds, 'relay'] as const
type Kind = (typeof kinds)[number]

const isWord = (kind: Kind): kind is WordKind => (wordKinds as readonly Kind[]).includes(kind)
const isSite = (kind: Kind): kind is SiteDecision => (siteKinds as readonly Kind[]).includes(kind)

/** What the crews decide, entered as they decide it. */
export function DecidePanel({ desk, placing }: { desk: ExerciseDesk; placing?: Placing | undefined }) {
  const { session, names } = desk
  const [by, setBy] = useState<string>()
  const [kind, setKind] = useState<Kind>('send')
  const [turn, setTurn] = useState(0)
  const { said, decidePlan, decideLay } = usePlanDecision(desk)
  if (!session) return null
  const { spec, conditions, bundle } = session.now.world
  const isPossible = (one: Kind) => (one === 'lay' ? spec.feeds !== undefined : one === 'road' ? conditions.closed.length > 0 : one === 'carry' ? bundle.plan.dumpSites.length > 1 : true)
  const form = { session, names, by: by ?? '', isOff: desk.isEnded, placing, decide: desk.decide, decidePlan, decideLay, done: () => { setTurn(turn + 1) } }
  return (
    <Card title={say('exercise.decisions')} level={2} startsOpen>
      <div className={styles.form}>
        <TextField label={say('exercise.decisions.by')} hint={say('exercise.decisions.by.hint')} value={by} onCommit={setBy} />
        <ChoiceField label={say('exercise.decide.what')} value={kind} choices={kinds.filter((one) => one === kind || isPossible(one)).map((value) => ({ value, label: say(`exercise.decide.${value}`) }))} onCommit={(value) => { setKind(value ?? 'send'); setTurn(turn + 1) }} />
        {isWord(kind) && <WordForm key={turn} kind={kind} {...form} />}
        {isSite(kind) && <SiteForm key={turn} kind={kind} {...form} />}
        {kind === 'relay' && <LayDecision key={turn} {...form} />}
        {said && <p role="status">{said}</p>}
      </div>
    </Card>
  )
}
