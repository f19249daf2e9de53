'use client'

import { defaults } from '@/lib/supply'
import { ItemFields } from '../_fields/item-context'
import { ItemChoice, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { ItemNumber } from '../_fields/item-number'
import { say } from '../_text'
import '../_text/areas/survey'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'

/** What holds for the whole district. */
export function DistrictSettings() {
  const { district } = useSurvey()
  return (
    <ItemFields docId={district.id} docKind="district" item={district}>
      <div className={styles.fields}>
        <ItemText field="name" isRequired />
        <ItemQuantity field="altitude_ft" standIn={defaults.altitude_ft} />
        <ItemQuantity field="water_degF" standIn={defaults.water_degF} />
        <ItemQuantity field="barometer_inHg" hint={say('survey.barometer.hint')} standIn={{ value: 29.92, mark: 'handbook', source: say('survey.barometer.standard') }} />
        <ItemQuantity field="average_mph" hint={say('survey.average.hint')} standIn={defaults.average_mph} />
        <ItemNumber field="roadFactor" hint={say('survey.road-factor.hint')} standIn={defaults.roadFactor} />
        <ItemChoice field="units" none={say('survey.units.none')} />
        <ItemText field="notes" isLong />
      </div>
    </ItemFields>
  )
}
