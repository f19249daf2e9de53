'use client'

import { constructionTypes, type Hazard } from '@/lib/plan'
import { choiceLabel } from '../_fields/choice-label'
import { ItemCheck, ItemChoice, ItemCount, ItemQuantity } from '../_fields/item-inputs'
import { useItem } from '../_fields/item-context'
import { ItemNumber } from '../_fields/item-number'
import { fieldLabel, say } from '../_text'
import '../_text/areas/survey'
import { ChoiceField } from '../_ui/choice-field'
import { NeededFlowChoice } from './needed-flow-choice'

const occupancyClasses = ['3', '4', '5', '6', '7'] as const

/** What may burn, and what it needs. */
export function HazardFields({ hazard }: { hazard: Hazard }) {
  const { set } = useItem()
  return (
    <>
      <ItemQuantity field="length_ft" />
      <ItemQuantity field="width_ft" />
      <ItemQuantity field="storeyHeight_ft" />
      <ItemCount field="storeyCount" standIn={1} />
      <ItemQuantity field="ridgeHeight_ft" />
      <ChoiceField
        label={fieldLabel('occupancyClass')} none={say('kit.choose')} value={hazard.occupancyClass === undefined ? undefined : String(hazard.occupancyClass)}
        choices={occupancyClasses.map((value) => ({ value, label: choiceLabel('occupancyClass', value) }))}
        onCommit={(value) => { set({ occupancyClass: value === undefined ? undefined : Number(value) }) }}
      />
      <ItemChoice field="constructionType" none={say('kit.choose')} choices={constructionTypes.map((value) => ({ value, label: choiceLabel('constructionType', value) }))} />
      <ItemCheck field="isDwelling" />
      <ItemCount field="exposureCount" standIn={0} />
      <ItemQuantity field="spacing_ft" />
      <ItemCheck field="isSprinklered" />
      <ItemNumber field="involvedShare" isShare standIn={{ value: 1, mark: 'assumed', source: say('survey.involved.whole') }} />
      <NeededFlowChoice hazard={hazard} />
    </>
  )
}
