'use client'

import { memo } from 'react'
import type { District, Resource } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import { ItemFields } from '../_fields/item-context'
import { ItemCheck, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { useHeadInView } from '../_fields/use-head-in-view'
import { itemHref } from '../_links/screens'
import { say, type UnitSystem } from '../_text'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Card } from '../_ui/card'
import { EquipmentFields } from './equipment-fields'
import { resourceSummary } from './resource-summary'
import styles from './resources.module.css'
import { Section, UnitFields } from './unit-fields'

export type ResourceCardProps = {
  resource: Resource
  district: District
  system: UnitSystem
  isOpen: boolean
  onToggle: (isOpen: boolean) => void
  onCopy: (resource: Resource) => void
  onRemove: (resource: Resource) => void
}

/** One vehicle, piece of equipment or station: its main figures in a line, all of them when it is open. */
export const ResourceCard = memo(function ResourceCard({ resource, district, system, isOpen, onToggle, onCopy, onRemove }: ResourceCardProps) {
  const { list, item } = resource
  const { text, figures, attention } = resourceSummary(resource, district, system)
  const holder = useHeadInView(isOpen)
  return (
    <div ref={holder} className={styles.resource}>
      <Card
        title={item.name} isOpen={isOpen} onToggle={onToggle}
        summary={<>{text}{attention && <span className={styles.attention}> · {attention}</span>}{figures.length > 0 && <span className={styles.figuresBelow}> · {figures.join(' · ')}</span>}</>}
        aside={<span className={styles.figures}>{figures.map((figure) => <span key={figure} className={styles.figure}>{figure}</span>)}</span>}
      >
        {isOpen && (
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
        )}
      </Card>
    </div>
  )
})

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
