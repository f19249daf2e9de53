'use client'

import { defaults, likelySupplyLine } from '@/lib/supply'
import { equipmentTemplates, type DumpSite, type Equipment } from '@/lib/plan'
import { ItemFields } from '../_fields/item-context'
import { ItemChoice, ItemCount, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { PartFields } from '../_fields/part-fields'
import { formatGiven, formatQuantity, inUnits, say, type TextKey } from '../_text'
import { Button } from '../_ui/button'
import { CheckField } from '../_ui/check-field'
import { Fold } from '../_ui/fold'
import { Menu } from '../_ui/menu'
import { useUnitSystem } from '../_ui/unit-system-context'
import { countSet } from './count-set'
import { FigureRow } from './figure-row'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'
import { UnitChoice } from './unit-choice'

const moreFields = ['supplyLine', 'supplyLineRise_ft', 'setUp_s', 'pumpSetUp_s', 'reprime_s'] as const
const tankFields = ['transfer_gpm', 'draftLimit_in', 'tankSlope_in', 'leak_gpm'] as const

/** Where tenders give their water: portable tanks, positions, and the pumper that drafts there. */
export function DumpCard({ site }: { site: DumpSite }) {
  const { district, plan, result, editPlan, editBoth, newId } = usePlanBoard()
  const [system] = useUnitSystem()
  const found = result?.sites.find((one) => one.kind === 'dumpSite' && one.id === site.id)
  const tanks = district.equipment.filter(({ kind }) => kind === 'portableTank')
  const carrier = ({ carriedBy }: Equipment) => district.apparatus.find(({ id }) => id === carriedBy)?.name
  const chosen = site.portableTankIds ?? []
  const hasChain = !site.nurseId && chosen.length > 1
  const hasSiphons = hasChain && site.tankLink === 'jetSiphon'
  const setTanks = (ids: readonly string[]) => ({ kind: 'setFields' as const, collection: 'dumpSites', id: site.id, set: { portableTankIds: ids.length > 0 ? ids : null } })
  return (
    <ItemFields docId={plan.id} docKind="plan" collection="dumpSites" item={site}>
      <div className={styles.fields}>
        <ItemText field="name" isRequired />
        <UnitChoice
          label={say('plan.pumper')} none={say('plan.pumper.none')} kind="pumper" value={site.pumperId}
          onChoose={(id, before) => { editBoth({ district: before?.district ?? [], plan: [{ kind: 'setFields', collection: 'dumpSites', id: site.id, set: { pumperId: id ?? null } }] }, say('plan.pumper')) }}
        />
        {!site.nurseId && <fieldset className={styles.set}>
          <legend className={styles.setTitle}>{say('plan.tank')}</legend>
          {tanks.map((tank) => (
            <CheckField
              key={tank.id} label={tank.name} {...(carrier(tank) && { hint: say('plan.tank.carried-by', { name: carrier(tank) ?? '' }) })} isChecked={chosen.includes(tank.id)}
              onCommit={(isChecked) => { editPlan(setTanks(isChecked ? [...chosen, tank.id] : chosen.filter((id) => id !== tank.id)), say('plan.tank')) }}
            />
          ))}
          <Menu
            label={say('plan.add-tank')} icon="add" look="quiet" size="s"
            items={equipmentTemplates.filter(({ kind }) => kind === 'portableTank').map(({ key, ...template }) => ({
              id: key, label: inUnits(say(`plan.template.${key}` as TextKey), system),
              onSelect: () => {
                const id = newId()
                editBoth({ district: [{ kind: 'addItem', collection: 'equipment', item: { ...template, id, name: inUnits(say(`plan.template.${key}` as TextKey), system) } }], plan: [setTanks([...chosen, id])] }, say('plan.add-tank'))
              },
            }))}
          />
        </fieldset>}
        {hasChain && <ItemChoice field="tankLink" none={say('choice.tankLink.drains')} choices={(['drains', 'jetSiphon'] as const).map((value) => ({ value, label: say(`choice.tankLink.${value}`) }))} hint={say('plan.hint.tank-link')} />}
        {hasSiphons && <ItemCount field="jetSiphonCount" standIn={chosen.length - 1} />}
        {!site.nurseId && chosen.length === 0 && <ItemQuantity field="tankCapacity_gal" standIn={defaults.portableTank_gal} hint={say('plan.hint.capacity')} />}
        <UnitChoice
          label={say('plan.nurse')} none={say('plan.nurse.none')} kind="tender" value={site.nurseId}
          onChoose={(id, before) => { editBoth({ district: before?.district ?? [], plan: [{ kind: 'setFields', collection: 'dumpSites', id: site.id, set: { nurseId: id ?? null } }] }, say('plan.nurse')) }}
        />
        {site.nurseId && <ItemQuantity field="intake_gpm" standIn={defaults.nurseIntake_gpm} />}
        {site.nurseId && <ItemQuantity field="outlet_gpm" standIn={defaults.nurseOutlet_gpm} />}
        <ItemCount field="positionCount" standIn={1} />
        <ItemChoice field="manner" none={say('choice.manner.none')} choices={(['backIn', 'driveThrough'] as const).map((value) => ({ value, label: say(`choice.manner.${value}`) }))} />
        {found?.kind === 'dumpSite' && (
          <div className={styles.figures}>
            <FigureRow figure={`site/${site.id}/pump_gpm`} label={say('plan.figure.pump')} value={formatGiven(found.pump_gpm, system)} />
            <p className={styles.plainFigure}><span>{say('plan.figure.capacity')}</span><span>{formatQuantity(found.capacity_gal, 'gal', system)}</span></p>
          </div>
        )}
        <Fold title={say('plan.more-fields')} note={say(site.nurseId ? 'plan.more.nurse' : 'plan.more.dump')} setCount={countSet(site, site.nurseId ? moreFields : [...moreFields, ...tankFields])}>
          <PartFields isSaid label={say('plan.supply-line')} field="supplyLine" part={site.supplyLine} base={likelySupplyLine({ district, plan }, site)}>
            <ItemQuantity field="size_in" absent={say('plan.supply-line.none')} />
            <ItemQuantity field="length_ft" absent={say('plan.supply-line.none')} hint={say('plan.hint.supply-line')} />
            <ItemCount field="lineCount" standIn={1} />
          </PartFields>
          {site.supplyLine && <ItemQuantity field="supplyLineRise_ft" absent={say('entry.none.level')} />}
          <ItemQuantity field="setUp_s" standIn={defaults.dumpSetUp_s} />
          <ItemQuantity field="pumpSetUp_s" standIn={defaults.pumpSetUp_s} />
          <ItemQuantity field="reprime_s" standIn={defaults.reprime_s} />
          {hasSiphons && <ItemQuantity field="transfer_gpm" hint={say('plan.hint.transfer')} />}
          {!site.nurseId && <ItemQuantity field="draftLimit_in" hint={say('plan.hint.draft-limit')} />}
          {!site.nurseId && <ItemQuantity field="tankSlope_in" absent={say('entry.none.level')} />}
          {!site.nurseId && <ItemQuantity field="leak_gpm" absent={say('entry.none.nothing')} />}
        </Fold>
        <Button
          look="danger" icon="trash" size="s" label={say('plan.remove-site', { name: site.name })}
          onClick={() => { editPlan({ kind: 'removeItem', collection: 'dumpSites', id: site.id }, say('plan.remove-site', { name: site.name })) }}
        />
      </div>
    </ItemFields>
  )
}
