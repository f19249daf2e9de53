'use client'

import { findStation, type Bundle } from '@/lib/plan'
import { say, type NameOf } from '../../_text'
import '../../_text/areas/exercise'
import { CheckField } from '../../_ui/check-field'
import { ChoiceField, type Choice } from '../../_ui/choice-field'
import styles from '../exercise.module.css'
import { freeUnits } from './plan-edits'

export const choicesOf = (items: readonly { readonly id: string }[], names: NameOf): Choice<string>[] => items.map(({ id }) => ({ value: id, label: names(id) ?? id }))

/** Units with the station they come from, and whether that is another department's. */
export function unitChoices(bundle: Bundle, kind: 'tender' | 'pumper', names: NameOf): Choice<string>[] {
  return freeUnits(bundle, kind).map(({ id, stationId, mutualAid }) => {
    const station = findStation(bundle, stationId)
    const unit = names(id) ?? id
    // A name may say already whose it is, or where it stands.
    const isSaid = station?.name.toLowerCase().includes(say('exercise.unit.mutual-aid').toLowerCase()) ?? false
    const aid = (mutualAid ?? station?.mutualAid) && !isSaid ? ` (${say('exercise.unit.mutual-aid')})` : ''
    return { value: id, label: station ? `${say('exercise.unit', { unit, station: station.name })}${aid}` : unit }
  })
}

export function PumperField({ bundle, names, value, none, onCommit }: { bundle: Bundle; names: NameOf; value: string | undefined; none: string; onCommit: (id: string | undefined) => void }) {
  return <ChoiceField label={say('exercise.decide.which-pumper')} none={none} value={value} choices={unitChoices(bundle, 'pumper', names)} onCommit={onCommit} />
}

/** Several of a list. */
export function CheckList({ legend, choices, value, onCommit }: { legend: string; choices: readonly Choice<string>[]; value: readonly string[]; onCommit: (ids: string[]) => void }) {
  return (
    <fieldset className={styles.checks}>
      <legend>{legend}</legend>
      {choices.map(({ value: id, label }) => (
        <CheckField key={id} label={label} isChecked={value.includes(id)} onCommit={(isChecked) => { onCommit(isChecked ? [...value, id] : value.filter((one) => one !== id)) }} />
      ))}
    </fieldset>
  )
}
