import { evidenceMarks } from '@/lib/evidence'
import type { FoundFile } from '@/lib/exchange'
import { sourceKinds } from '@/lib/plan'
import type { DocumentEntry } from '../_client'
import { choiceLabel } from '../_fields/choice-label'
import { say } from '../_text'
import '../_text/areas/exchange'
import { CheckField } from '../_ui/check-field'
import { ChoiceField } from '../_ui/choice-field'
import { ColumnMapper } from './column-mapper'
import { listName, takenLists } from './exchange-words'
import styles from './exchange.module.css'
import type { FileStudy } from './use-understood'

/** What a person says of a file as a whole, and of each of its columns. */
export function FileChoicesForm({ study, file, plans }: { study: FileStudy; file: FoundFile; plans: readonly DocumentEntry[] }) {
  const { choices, set, needsMapping, needsPlan } = study
  return (
    <>
      <div className={styles.fields}>
        {needsMapping && <ChoiceField label={say('exchange.become')} value={choices.list} choices={takenLists.map((value) => ({ value, label: listName(value) }))} onCommit={(list) => { if (list) set({ list }) }} />}
        {needsPlan && <ChoiceField label={say('exchange.plan')} none={say('exchange.plan.none')} value={choices.planId} choices={plans.map(({ id, name }) => ({ value: id, label: name }))} onCommit={(planId) => { set({ planId }) }} />}
        {needsMapping && choices.list === 'sources' && <ChoiceField label={say('exchange.kind')} none={say('exchange.kind.none')} value={choices.kind} choices={sourceKinds.map((value) => ({ value, label: choiceLabel('kind', value) }))} onCommit={(kind) => { set({ kind }) }} />}
        {needsMapping && file.format === 'csv' && (
          <ChoiceField
            label={say('exchange.decimal')} value={choices.decimal === '.' ? 'point' : 'comma'}
            choices={[{ value: 'point', label: say('exchange.decimal.point') }, { value: 'comma', label: say('exchange.decimal.comma') }]}
            onCommit={(sign) => { set({ decimal: sign === 'comma' ? ',' : '.' }) }}
          />
        )}
        {needsMapping && <ChoiceField label={say('exchange.known')} hint={say('exchange.known.hint')} value={choices.mark} choices={evidenceMarks.map((value) => ({ value, label: say(`evidence.${value}`) }))} onCommit={(mark) => { if (mark) set({ mark }) }} />}
      </div>
      {needsMapping && <CheckField label={say('exchange.swapped')} isChecked={choices.isSwapped} onCommit={(isSwapped) => { set({ isSwapped }) }} />}
      {needsMapping && file.columns.length > 0 && <ColumnMapper file={file} list={choices.list} columns={choices.columns} onChange={(columns) => { set({ columns }) }} />}
    </>
  )
}
