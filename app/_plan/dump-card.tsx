'use client'

import { defaults } from '@/lib/supply'
import { equipmentTemplates, type DumpSite } from '@/lib/plan'
import { ItemFields } from '../_fields/item-context'
import { ItemChoice, ItemCount, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { formatQuantity, say, type TextKey } from '../_text'
import { Button } from '../_ui/button'
import { CheckField } from '../_ui/check-field'
import { Menu } from '../_ui/menu'
import { useUnitSystem } from '../_ui/unit-system-context'
import { FigureRow } from './figure-row'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'
import { UnitChoice } from './unit-choice'

/** Where tenders give their water: portable tanks, positions, and the pumper that drafts there. */
export function DumpCard({ site }: { site: DumpSite }) {
  const { district, plan, result, editPlan, editBoth, newId } = usePlanBoard()
  const [system] = useUnitSystem()
  const found = result?.sites.find((one) => one.kind === 'dumpSite' && one.id === site.id)
  const tanks = district.equipment.filter(({ kind }) => kind === 'portableTank')
  const chosen = site.portableTankIds ?? []
  const setTanks = (ids: readonly string[]) => ({ kind: 'setFields' as const, collection: 'dumpSites', id: site.id, set: { portableTankIds: ids.length > 0 ? ids : null } })
  return (
    <ItemFields docId={plan.id} docKind="plan" collection="dumpSites" item={site}>
      <div className={styles.fields}>
        <ItemText field="name" isRequired />
        <UnitChoice
          label={say('plan.pumper')} none={say('plan.pumper.none')} kind="pumper" value={site.pumperId}
          onChoose={(id, before) => { editBoth({ district: before?.district ?? [], plan: [{ kind: 'setFields', collection: 'dumpSites', id: site.id, set: { pumperId: id ?? null } }] }, say('plan.pumper')) }}
        />
        <fieldset className={styles.set}>
          <legend className={styles.setTitle}>{say('plan.tank')}</legend>
          {tanks.map((tank) => (
            <CheckField
              key={tank.id} label={tank.name} isChecked={chosen.includes(tank.id)}
              onCommit={(isChecked) => { editPlan(setTanks(isChecked ? [...chosen, tank.id] : chosen.filter((id) => id !== tank.id)), say('plan.tank')) }}
            />
          ))}
          <Menu
            label={say('plan.add-tank')} icon="add" look="quiet" size="s"
            items={equipmentTemplates.filter(({ kind }) => kind === 'portableTank').map(({ key, ...template }) => ({
              id: key, label: say(`plan.template.${key}` as TextKey),
              onSelect: () => {
                const id = newId()
                editBoth({ district: [{ kind: 'addItem', collection: 'equipment', item: { ...template, id, name: say(`plan.template.${key}` as TextKey) } }], plan: [setTanks([...chosen, id])] }, say('plan.add-tank'))
              },
            }))}
          />
        </fieldset>
        {chosen.length === 0 && <ItemQuantity field="tankCapacity_gal" hint={say('plan.hint.capacity')} />}
        {found?.kind === 'dumpSite' && (
          <div className={styles.figures}>
            <FigureRow figure={`site/${site.id}/pump_gpm`} label={say('plan.figure.pump')} value={found.pump_gpm === null ? say('quantity.unknown') : formatQuantity(found.pump_gpm, 'gpm', system)} />
            <p className={styles.plainFigure}><span>{say('plan.figure.capacity')}</span><span>{formatQuantity(found.capacity_gal, 'gal', system)}</span></p>
          </div>
        )}
        <ItemCount field="positionCount" standIn={1} />
        <ItemChoice field="manner" none={say('choice.manner.backIn')} choices={(['backIn', 'driveThrough'] as const).map((value) => ({ value, label: say(`choice.manner.${value}`) }))} />
        <ItemQuantity field="setUp_s" standIn={defaults.dumpSetUp_s} />
        <ItemQuantity field="pumpSetUp_s" standIn={defaults.pumpSetUp_s} />
        <ItemQuantity field="tankSlope_in" />
        <ItemQuantity field="draftLimit_in" hint={say('plan.hint.draft-limit')} />
        <ItemQuantity field="reprime_s" standIn={defaults.reprime_s} />
        <Button
          look="danger" icon="trash" size="s" label={say('plan.remove-site', { name: site.name })}
          onClick={() => { editPlan({ kind: 'removeItem', collection: 'dumpSites', id: site.id }, say('plan.remove-site', { name: site.name })) }}
        />
      </div>
    </ItemFields>
  )
}
