'use client'

import type { District, Resource } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import { ItemFields } from '../_fields/item-context'
import { ItemCheck, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { itemHref } from '../_links/screens'
import { say } from '../_text'
import '../_text/areas/resources'
import '../_text/areas/survey'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { EquipmentFields } from './equipment-fields'
import styles from './resources.module.css'
import { Section, UnitFields } from './unit-fields'

export type ResourceBodyProps = {
  resource: Resource
  district: District
  onCopy: (resource: Resource) => void
  onRemove: (resource: Resource) => void
}

/** All that is known of one vehicle, piece of equipment or station, and what can be done with it. */
export function ResourceBody({ resource, district, onCopy, onRemove }: ResourceBodyProps) {
  const { list, item } = resource
  return (
    <ItemFields docId={district.id} docKind="district" collection={list} item={item}>
      <div className={styles.body}>
        {resource.list === 'apparatus' && <UnitFields unit={resource.item} district={district} />}
        {resource.list === 'equipment' && <EquipmentFields item={resource.item} district={district} />}
        {resource.list === 'stations' && <StationParts resource={resource} district={district} />}
        <div className={styles.buttons}>
          {list !== 'stations' && <Button size="s" icon="add" label={say('resources.copy')} onClick={() => { onCopy(resource) }} />}
          <Button size="s" look="danger" icon="trash" label={say('kit.delete', { name: item.name })} onClick={() => { onRemove(resource) }} />
        </div>
      </div>
    </ItemFields>
  )
}

function StationParts({ resource: { item }, district }: { resource: Resource & { list: 'stations' }; district: District }) {
  return (
    <div className={styles.sections}>
      <Section title={say('resources.station')}>
        <ItemText field="name" isRequired />
        <ItemQuantity field="turnout_s" standIn={defaults.turnout_s} />
        <ItemCheck field="mutualAid" />
        <ItemText field="notes" isLong />
      </Section>
      <Section title={say('survey.point')}>
        <ButtonLink size="s" icon="pick" label={say('resources.on-map')} href={itemHref('survey', district.id, item.id)} />
      </Section>
    </div>
  )
}
