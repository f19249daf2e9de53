'use client'

import { triggerSchema, type Trigger } from '@/lib/plan'
import { say, type NameOf } from '../_text'
import '../_text/areas/exercise'
import { ChoiceField } from '../_ui/choice-field'
import { CountField } from '../_ui/count-field'
import { choicesOf } from './decide/fields'

const MOST_MINUTES = 24 * 60
const events = ['first-water', 'all-supply-ready', 'draft-lost', 'engine-empty'] as const

/** When an inject comes, in whole minutes and parts of a hundred. */
export function TriggerFields({ trigger, dumps, names, onChange }: { trigger: Trigger; dumps: readonly { readonly id: string }[]; names: NameOf; onChange: (trigger: Trigger) => void }) {
  const put = (made: Trigger) => { if (triggerSchema.safeParse(made).success) onChange(made) }
  switch (trigger.kind) {
    case 'hand':
      return null
    case 'time':
      return <CountField label={say('exercise.inject.minute')} value={Math.round(trigger.at_s / 60)} max={MOST_MINUTES} onCommit={(minutes) => { put({ kind: 'time', at_s: (minutes ?? 0) * 60 }) }} />
    case 'level':
      return (
        <>
          <ChoiceField label={say('exercise.decide.to-dump')} value={trigger.dumpSiteId} choices={choicesOf(dumps, names)} onCommit={(dumpSiteId) => { if (dumpSiteId !== undefined) put({ ...trigger, dumpSiteId }) }} />
          <CountField label={say('exercise.inject.below')} value={Math.round(trigger.belowShare * 100)} min={1} max={100} onCommit={(percent) => { put({ ...trigger, belowShare: (percent ?? 33) / 100 }) }} />
        </>
      )
    case 'after':
      return (
        <>
          <ChoiceField label={say('exercise.inject.event')} value={trigger.event} choices={events.map((value) => ({ value, label: say(`exercise.event.${value}`) }))} onCommit={(event) => { if (event) put({ ...trigger, event }) }} />
          <CountField label={say('exercise.inject.delay')} value={Math.round(trigger.delay_s / 60)} max={MOST_MINUTES} onCommit={(minutes) => { put({ ...trigger, delay_s: (minutes ?? 0) * 60 }) }} />
        </>
      )
  }
}
