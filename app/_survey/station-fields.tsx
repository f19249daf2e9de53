'use client'

import type { Station } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import { ItemCheck, ItemQuantity } from '../_fields/item-inputs'
import { say } from '../_text'
import { ButtonLink } from '../_ui/button-link'
import { screenHref } from '../_ui/screens'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'

/** Where apparatus comes from, and what stands there. */
export function StationFields({ station }: { station: Station }) {
  const { district } = useSurvey()
  const units = district.apparatus.filter(({ stationId }) => stationId === station.id)
  return (
    <>
      <ItemQuantity field="turnout_s" standIn={defaults.turnout_s} />
      <ItemCheck field="mutualAid" />
      <div className={styles.links}>
        <p className={styles.legend}>{say('survey.station.units', { count: units.length })}</p>
        {units.map(({ id, name }) => <ButtonLink key={id} size="s" look="quiet" iconAfter="arrowRight" label={name} href={`${screenHref('resources', district.id)}?item=${encodeURIComponent(id)}`} />)}
      </div>
    </>
  )
}
