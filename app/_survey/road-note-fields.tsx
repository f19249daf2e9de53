'use client'

import type { RoadNote } from '@/lib/plan'
import { NOTE_REACH_FT } from '@/lib/roads'
import { useItem } from '../_fields/item-context'
import { choiceLabel } from '../_fields/choice-label'
import { ItemChoice, ItemQuantity } from '../_fields/item-inputs'
import { formatQuantity, say } from '../_text'
import '../_text/areas/survey'
import { Caution } from '../_ui/caution'
import { ChoiceField } from '../_ui/choice-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'
import { useNearRoad } from './use-near-road'

const states = ['closed', 'open'] as const

/** What an officer noted on a road: it stands against the imported data, for the road nearest to it. */
export function RoadNoteFields({ note }: { note: RoadNote }) {
  const { set } = useItem()
  return (
    <>
      <OnRoad note={note} />
      <ChoiceField
        label={say('survey.road.state')} none={say('survey.road.state.none')}
        choices={states.map((value) => ({ value, label: say(`survey.road.state.${value}`) }))}
        value={note.closed === undefined ? undefined : note.closed ? 'closed' : 'open'}
        onCommit={(value) => { set({ closed: value === undefined ? undefined : value === 'closed' }) }}
      />
      <ItemQuantity field="maxWeight_lb" />
      <ItemQuantity field="maxHeight_ft" />
      <ItemQuantity field="maxWidth_ft" />
      <ItemQuantity field="speed_mph" />
      <ItemChoice field="oneWay" none={say('survey.road.one-way.none')} choices={(['no', 'forward', 'backward'] as const).map((value) => ({ value, label: choiceLabel('oneWay', value) }))} />
      <p className={styles.quiet}>{say('survey.road.effect')}</p>
      <Caution kinds={['bridges']} />
    </>
  )
}

/** The road it takes hold on, and what the data says of that road. */
function OnRoad({ note }: { note: RoadNote }) {
  const { district } = useSurvey()
  const [system] = useUnitSystem()
  const road = useNearRoad(district.roads?.hash, note.point)
  if (!district.roads) return <p className={styles.quiet}>{say('survey.road.no-data')}</p>
  if (!road) return null
  const away = formatQuantity(road.distance_ft, 'ft', system, { digits: 0 })
  if (road.distance_ft > NOTE_REACH_FT) return <p className={styles.wrong}>{say('survey.road.too-far', { distance: away, reach: formatQuantity(NOTE_REACH_FT, 'ft', system, { digits: 0 }) })}</p>
  const name = road.name || road.ref || say('issue.unnamed-road')
  const says = [
    ...(road.isBridge ? [say('survey.road.bridge')] : []),
    ...(road.maxWeight_lb === undefined ? [] : [say('survey.road.weight', { weight: formatQuantity(road.maxWeight_lb, 'lb', system) })]),
    ...(road.maxHeight_ft === undefined ? [] : [say('survey.summary.high', { height: formatQuantity(road.maxHeight_ft, 'ft', system) })]),
    ...(road.maxWidth_ft === undefined ? [] : [say('survey.summary.wide', { width: formatQuantity(road.maxWidth_ft, 'ft', system) })]),
    ...(road.speed_mph === undefined ? [] : [formatQuantity(road.speed_mph, 'mph', system)]),
  ]
  return (
    <div className={styles.computed}>
      <p className={styles.computedFigure}><span>{say('survey.road.on')}</span> <strong>{name}</strong> <span className={styles.how}>{say('survey.road.away', { distance: away })}</span></p>
      <p className={styles.how}>{says.length > 0 ? say('survey.road.data', { says: says.join(' · ') }) : say('survey.road.data.none')}</p>
    </div>
  )
}
