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
        <UnitChoice
          label={say('plan.nurse')} none={say('plan.nurse.none')} kind="tender" value={site.nurseId}
          onChoose={(id, before) => { editBoth({ district: before?.district ?? [], plan: [{ kind: 'setFields', collection: 'dumpSites', id: site.id, set: { nurseId: id ?? null } }] }, say('plan.nurse')) }}
        />
        {site.nurseId && <ItemQuantity field="intake_gpm" standIn={defaults.nurseIntake_gpm} />}
        {site.nurseId && <ItemQuantity field="outlet_gpm" standIn={defaults.nurseOutlet_gpm} />}
        {!site.nurseId && <fieldset className={styles.set}>
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
        </fieldset>}
        {!site.nurseId && chosen.length > 1 && <ItemChoice field="tankLink" none={say('choice.tankLink.drains')} choices={(['drains', 'jetSiphon'] as const).map((value) => ({ value, label: say(`choice.tankLink.${value}`) }))} hint={say('plan.hint.tank-link')} />}
        {!site.nurseId && chosen.length > 1 && site.tankLink === 'jetSiphon' && (
          <>
            <ItemCount field="jetSiphonCount" standIn={chosen.length - 1} />
            <ItemQuantity field="transfer_gpm" hint={say('plan.hint.transfer')} />
          </>
        )}
        {!site.nurseId && chosen.length === 0 && <ItemQuantity field="tankCapacity_gal" hint={say('plan.hint.capacity')} />}
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
        {!site.nurseId && <ItemQuantity field="tankSlope_in" />}
        {!site.nurseId && <ItemQuantity field="leak_gpm" />}
        {!site.nurseId && <ItemQuantity field="draftLimit_in" hint={say('plan.hint.draft-limit')} />}
        <ItemQuantity field="reprime_s" standIn={defaults.reprime_s} />
        <Button
          look="danger" icon="trash" size="s" label={say('plan.remove-site', { name: site.name })}
          onClick={() => { editPlan({ kind: 'removeItem', collection: 'dumpSites', id: site.id }, say('plan.remove-site', { name: site.name })) }}
        />
      </div>
    </ItemFields>
  )
}
