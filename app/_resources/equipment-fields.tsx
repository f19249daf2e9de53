'use client'

import type { District, Equipment } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import { choiceLabel } from '../_fields/choice-label'
import { ItemChoice, ItemCount, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { ItemNumber } from '../_fields/item-number'
import { say } from '../_text'
import '../_text/areas/resources'
import styles from './resources.module.css'
import { Section } from './unit-fields'

/** Hose, tanks, suction, strainers, siphons: what each kind has, and which vehicle carries it. */
export function EquipmentFields({ item, district }: { item: Equipment; district: District }) {
  return (
    <div className={styles.sections}>
      <Section title={choiceLabel('kind', item.kind)}>
        <ItemText field="name" isRequired />
        <ItemChoice field="carriedBy" label={say('resources.carried')} none={say('resources.not-carried')} choices={district.apparatus.map(({ id, name }) => ({ value: id as string, label: name }))} />
        <ItemCount field="count" standIn={1} />
      </Section>
      <Section title={say('resources.part.figures')}>
        {item.kind === 'portableTank' && <ItemQuantity field="capacity_gal" />}
        {item.kind === 'portableTank' && <ItemQuantity field="height_in" standIn={defaults.portableTankHeight_in} />}
        {item.kind === 'strainer' && <ItemChoice field="style" />}
        {item.kind !== 'portableTank' && <ItemQuantity field="size_in" />}
        {item.kind === 'hose' && <ItemQuantity field="length_ft" hint={say('resources.hose-length.hint')} />}
        {item.kind === 'hose' && <ItemNumber field="coefficient" hint={say('resources.coefficient.hint')} />}
        {item.kind === 'hose' && <ItemQuantity field="working_psi" />}
        {item.kind === 'hardSuction' && <ItemQuantity field="section_ft" />}
        {item.kind === 'jetSiphon' && <ItemQuantity field="drive_in" />}
        <ItemText field="notes" isLong />
      </Section>
    </div>
  )
}
