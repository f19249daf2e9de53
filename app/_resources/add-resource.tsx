'use client'

import { apparatusTemplates, equipmentTemplates, type District, type EditBody } from '@/lib/plan'
import { choiceLabel } from '../_fields/choice-label'
import { inUnits, say, type TextKey } from '../_text'
import '../_text/areas/resources'
import { Menu } from '../_ui/menu'
import { useUnitSystem } from '../_ui/unit-system-context'

export type Added = EditBody & { kind: 'addItem' }

const unitKinds = ['pumper', 'tender', 'portablePump'] as const

/** Adds apparatus from a template with the handbook's figures, or with none. */
export function AddApparatus({ district, newId, onAdd }: { district: District; newId: () => string; onAdd: (added: Added) => void }) {
  const [system] = useUnitSystem()
  const add = (unit: { kind: (typeof unitKinds)[number] }) => {
    const number = district.apparatus.filter(({ kind }) => kind === unit.kind).length + 1
    const name = say('resources.new-name', { kind: choiceLabel('kind', unit.kind), number })
    onAdd({ kind: 'addItem', collection: 'apparatus', item: { ...unit, id: newId(), name, ...(district.stations.length === 1 && { stationId: district.stations[0]?.id }) } })
  }
  return (
    <Menu
      label={say('resources.add-apparatus')} icon="add" look="primary"
      items={[
        ...apparatusTemplates.map(({ key, ...template }) => ({ id: key, label: inUnits(say(`plan.template.${key}` as TextKey), system), onSelect: () => { add(template) } })),
        ...unitKinds.map((kind) => ({ id: `blank-${kind}`, label: say('resources.blank', { kind: choiceLabel('kind', kind) }), onSelect: () => { add({ kind }) } })),
      ]}
    />
  )
}

/** Adds equipment; the sizes of a template are where every kind begins. */
export function AddEquipment({ newId, onAdd }: { newId: () => string; onAdd: (added: Added) => void }) {
  const [system] = useUnitSystem()
  return (
    <Menu
      label={say('resources.add-equipment')} icon="add"
      items={equipmentTemplates.map(({ key, ...template }) => {
        const label = inUnits(say(`plan.template.${key}` as TextKey), system)
        return { id: key, label, onSelect: () => { onAdd({ kind: 'addItem', collection: 'equipment', item: { ...template, id: newId(), name: label } }) } }
      })}
    />
  )
}
