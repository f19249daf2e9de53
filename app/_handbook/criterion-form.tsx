'use client'

import { useState } from 'react'
import type { CriterionAnswer } from '@/lib/supply'
import { usePlanBoard } from '../_plan/plan-context'
import { formatMinutes, formatQuantity, say, type NameOf } from '../_text'
import '../_text/areas/handbook'
import { Button } from '../_ui/button'
import { QuantityField } from '../_ui/quantity-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import shared from '../_look/shared.module.css'
import styles from './handbook.module.css'
import { shortWords } from './short-words'
import { VerdictMark } from './verdict-mark'

type Draft = { flow_gpm?: number | undefined; by_s?: number | undefined; for_s?: number | undefined }

/** The officer's own criterion: entered here, kept with the plan, answered pass or fail with the minute. */
export function CriterionForm({ answer, isPending, names }: { answer: CriterionAnswer | undefined; isPending: boolean; names: NameOf }) {
  const { plan, editPlan } = usePlanBoard()
  const [draft, setDraft] = useState<Draft>({})
  const stored = plan.criterion
  // What is kept goes before what was begun: undone, it stands in the fields again.
  const value: Draft = stored ?? draft
  const change = (part: Draft) => {
    const next = { ...value, ...part }
    const { flow_gpm, by_s, for_s } = next
    if (flow_gpm === undefined || by_s === undefined || for_s === undefined) {
      setDraft(next)
      if (stored) editPlan({ kind: 'setFields', set: { criterion: null } }, say('handbook.criterion'))
      return
    }
    setDraft({})
    editPlan({ kind: 'setFields', set: { criterion: { flow_gpm, by_s, for_s } } }, say('handbook.criterion'))
  }
  return (
    <section className={styles.part} aria-label={say('handbook.criterion')}>
      <h3 className={styles.subtitle}>{say('handbook.criterion')}</h3>
      <p className={styles.small}>{say('handbook.criterion.hint')}</p>
      <div className={styles.fields}>
        <QuantityField label={say('handbook.criterion.flow')} unit="gpm" hasMark={false} absent={say('entry.none.nothing')} min={1} max={20_000} value={value.flow_gpm} onCommit={({ value: flow_gpm }) => { change({ flow_gpm }) }} />
        <QuantityField label={say('handbook.criterion.by')} unit="s" hasMark={false} absent={say('entry.none.nothing')} min={0} max={172_800} value={value.by_s} onCommit={({ value: by_s }) => { change({ by_s }) }} />
        <QuantityField label={say('handbook.criterion.for')} unit="s" hasMark={false} absent={say('entry.none.nothing')} min={60} max={172_800} value={value.for_s} onCommit={({ value: for_s }) => { change({ for_s }) }} />
      </div>
      <div className={styles.answer} aria-live="polite">
        {!stored && <p>{say('handbook.criterion.none')}</p>}
        {stored && isPending && <p>{say('handbook.working')}</p>}
        {stored && !isPending && answer && <Answer answer={answer} names={names} />}
      </div>
      {stored && <Button look="quiet" size="s" icon="trash" label={say('handbook.criterion.clear')} className={shared.screenOnly} onClick={() => { setDraft({}); editPlan({ kind: 'setFields', set: { criterion: null } }, say('handbook.criterion.clear')) }} />}
    </section>
  )
}

function Answer({ answer: { criterion, verdict, fails_s, end_s, why, subjectIds }, names }: { answer: CriterionAnswer; names: NameOf }) {
  const [system] = useUnitSystem()
  return (
    <>
      <p className={styles.line}>
        <VerdictMark verdict={verdict} />
        <span>
          {verdict === 'pass'
            ? say('handbook.criterion.pass', { flow: formatQuantity(criterion.flow_gpm, 'gpm', system), by: formatMinutes(criterion.by_s), end: formatMinutes(end_s) })
            : say('handbook.criterion.fail', { time: formatMinutes(fails_s ?? criterion.by_s, 'down'), why: shortWords(why, subjectIds, names) })}
        </span>
      </p>
      <p className={styles.small}>{say('handbook.criterion.stored')}</p>
    </>
  )
}
