'use client'

import type { Evidence } from '@/lib/evidence'
import type { Point } from '@/lib/geo'
import { collectionOf, type Place } from '@/lib/plan'
import { ItemFields } from '../_fields/item-context'
import { ItemText } from '../_fields/item-inputs'
import { say } from '../_text'
import '../_text/areas/survey'
import { Button } from '../_ui/button'
import { EvidenceMark } from '../_ui/evidence-mark'
import { PointField } from '../_ui/point-field'
import { DraftSiteFields } from './draft-site-fields'
import { HazardFields } from './hazard-fields'
import { RoadNoteFields } from './road-note-fields'
import { SourceFields } from './source-fields'
import { StationFields } from './station-fields'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'

/** All that is known of one place, and what can be done with it. */
export function PlaceFields({ place }: { place: Place }) {
  const { district, edit, remove, placing, place: ask } = useSurvey()
  const { kind, item } = place
  const collection = collectionOf[kind]
  const evidence: Evidence | undefined = item.evidence?.point
  const isPicking = placing?.moveId === item.id
  const move = (point: Point | undefined) => {
    if (point) edit({ kind: 'setFields', collection, id: item.id, set: { point }, ...(evidence && { evidence: { point: null } }) }, say('survey.moved', { name: item.name }))
  }
  return (
    <ItemFields docId={district.id} docKind="district" collection={collection} item={item}>
      <div className={styles.fields}>
        <ItemText field="name" isRequired />
        {place.kind === 'source' && <SourceFields source={place.item} />}
        {place.kind === 'draftSite' && <DraftSiteFields site={place.item} />}
        {place.kind === 'hazard' && <HazardFields hazard={place.item} />}
        {place.kind === 'roadNote' && <RoadNoteFields note={place.item} />}
        {place.kind === 'station' && <StationFields station={place.item} />}
        <PointField label={say('survey.point')} value={item.point} isRequired isPicking={isPicking} onPick={() => { ask(isPicking ? undefined : { kind, moveId: item.id }) }} onCommit={move} />
        {evidence && (
          <p className={styles.known}>
            <span>{evidence.source ?? say('survey.point')}</span>
            <EvidenceMark field={say('survey.point')} evidence={evidence} onChange={(next) => { edit({ kind: 'setFields', collection, id: item.id, set: {}, evidence: { point: next } }, say('survey.point')) }} />
          </p>
        )}
        <ItemText field="notes" isLong />
        <Button look="danger" icon="trash" size="s" label={say('kit.delete', { name: item.name })} onClick={() => { remove(place) }} />
      </div>
    </ItemFields>
  )
}
