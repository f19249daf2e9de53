'use client'

import { apparatusTemplates, type Apparatus, type EditBody } from '@/lib/plan'
import { inUnits, say, type TextKey } from '../_text'
import { ChoiceField } from '../_ui/choice-field'
import { Menu } from '../_ui/menu'
import { useUnitSystem } from '../_ui/unit-system-context'
import { unitEdit } from './handbook-unit'
import { usePlanBoard } from './plan-context'

export type UnitKind = 'pumper' | 'tender'

const fits = (kind: UnitKind, unit: Pick<Apparatus, 'kind'>): boolean => (kind === 'tender' ? unit.kind === 'tender' : unit.kind !== 'tender')

/** Chooses the apparatus for a job, or adds one from a template and gives it the job. */
export function UnitChoice({ label, none, kind, value, onChoose }: {
  label: string; none: string; kind: UnitKind; value: string | undefined; onChoose: (id: string | undefined, before?: { district: readonly EditBody[] }) => void
}) {
  const { district, plan } = usePlanBoard()
  const busy = new Set([...plan.fillSites, ...plan.dumpSites].flatMap(({ pumperId }) => (pumperId && pumperId !== value ? [pumperId as string] : [])))
  const units = district.apparatus.filter((unit) => fits(kind, unit))
  return (
    <>
      <ChoiceField
        label={label} none={none} value={value}
        choices={units.map(({ id, name }) => ({ value: id as string, label: busy.has(id) ? say('plan.elsewhere', { name }) : name }))}
        onCommit={(id) => { onChoose(id) }}
      />
      <AddUnit kind={kind} onAdd={(id, added) => { onChoose(id, { district: [added] }) }} />
    </>
  )
}

/** Adds apparatus from a template with the handbook's figures. */
export function AddUnit({ kind, onAdd }: { kind: UnitKind; onAdd: (id: string, added: EditBody) => void }) {
  const { district, newId } = usePlanBoard()
  const [system] = useUnitSystem()
  return (
    <Menu
      label={say(kind === 'tender' ? 'plan.add-tender' : 'plan.add-pumper')} icon="add" look="quiet" size="s"
      items={apparatusTemplates.filter((template) => fits(kind, template)).map((template) => ({
        id: template.key,
        label: inUnits(say(`plan.template.${template.key}` as TextKey), system),
        onSelect: () => {
          const id = newId()
          onAdd(id, unitEdit(template, district, id))
        },
      }))}
    />
  )
}
