'use client'

import type { Station } from '@/lib/plan'
import { largestOrdinary } from '@/lib/roads'
import { defaults } from '@/lib/supply'
import { ItemCheck, ItemQuantity } from '../_fields/item-inputs'
import { itemHref } from '../_links/screens'
import { formatQuantity, say } from '../_text'
import '../_text/areas/survey'
import { ButtonLink } from '../_ui/button-link'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'
import { useDrives } from './use-near-road'

const MOST_HAZARDS = 20

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
        {units.map(({ id, name }) => <ButtonLink key={id} size="s" look="quiet" iconAfter="arrowRight" label={name} href={itemHref('resources', district.id, id)} />)}
      </div>
      <Arrivals station={station} />
    </>
  )
}

/** Dispatch to arrival at each target hazard, by the district's own roads. */
function Arrivals({ station }: { station: Station }) {
  const { district } = useSurvey()
  const [system] = useUnitSystem()
  const hazards = district.hazards.slice(0, MOST_HAZARDS)
  const drives = useDrives(district.roads?.hash, district.roadNotes, station.point, hazards.map(({ point }) => point))
  if (!district.roads || hazards.length === 0) return null
  const turnout_s = station.turnout_s ?? defaults.turnout_s.value
  return (
    <section className={styles.part}>
      <h4 className={styles.legend}>{say('survey.arrivals')}</h4>
      <ul className={styles.arrivals} aria-label={say('survey.arrivals')}>
        {hazards.map(({ id, name }, index) => {
          const drive_s = drives?.[index]
          return <li key={id}><span>{name}</span> <span>{drives === undefined ? say('survey.arrivals.pending') : drive_s === undefined ? say('survey.arrivals.none') : formatQuantity(turnout_s + drive_s, 's', system, { style: 'headline', toward: 'up' })}</span></li>
        })}
      </ul>
      <p className={styles.how}>{say('survey.arrivals.how', { weight: formatQuantity(largestOrdinary.gross_lb, 'lb', system), height: formatQuantity(largestOrdinary.height_ft, 'ft', system) })}</p>
    </section>
  )
}
