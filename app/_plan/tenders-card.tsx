'use client'

import { defaults, sitesOfTask } from '@/lib/supply'
import { findTender, type TenderTask } from '@/lib/plan'
import { ItemFields } from '../_fields/item-context'
import { ItemCheck, ItemChoice, ItemCount, ItemQuantity } from '../_fields/item-inputs'
import { formatFrom, formatGiven, formatQuantity, formatTime, say } from '../_text'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { Fold } from '../_ui/fold'
import { useUnitSystem } from '../_ui/unit-system-context'
import { countSet } from './count-set'
import { FigureRow } from './figure-row'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'
import { AddUnit } from './unit-choice'

/** The tenders that haul, and one more from the district or a template. */
export function TendersCard() {
  const { plan, district, editBoth, newId } = usePlanBoard()
  const assigned = new Set(plan.tenders.map(({ tenderId }) => tenderId as string))
  const free = district.apparatus.filter((unit) => unit.kind === 'tender' && !assigned.has(unit.id))
  const assign = (tenderId: string) => ({ kind: 'addItem' as const, collection: 'tenders', item: { id: newId(), tenderId } })
  return (
    <div className={styles.stack}>
      {plan.tenders.map((task) => <TenderTaskCard key={task.id} task={task} />)}
      {free.length > 0 && (
        <ul className={styles.buttons} aria-label={say('plan.free-tenders')}>
          {free.map((unit) => <li key={unit.id}><Button look="plain" size="s" icon="add" label={unit.name} onClick={() => { editBoth({ district: [], plan: [assign(unit.id)] }, say('plan.added', { name: unit.name })) }} /></li>)}
        </ul>
      )}
      <AddTender />
    </div>
  )
}

function AddTender() {
  const { editBoth, newId } = usePlanBoard()
  return (
    <AddUnit
      kind="tender"
      onAdd={(id, added) => { editBoth({ district: [added], plan: [{ kind: 'addItem', collection: 'tenders', item: { id: newId(), tenderId: id } }] }, say('plan.add-tender')) }}
    />
  )
}

function TenderTaskCard({ task }: { task: TenderTask }) {
  const board = usePlanBoard()
  const { plan, district, result, isWorking, editPlan, names } = board
  const [system] = useUnitSystem()
  const tender = findTender({ district }, task.tenderId)
  const found = result?.tenders.find(({ id }) => id === task.tenderId)
  const name = tender?.name ?? task.tenderId
  const sites = sitesOfTask({ district, plan }, task)
  const summary = found?.cycle_s
    ? say('plan.tender-summary', { load: formatQuantity(found.usable_gal ?? 0, 'gal', system), round: formatTime(found.cycle_s) })
    : say(isWorking ? 'plan.working' : 'plan.tender-out')
  return (
    <Card title={name} summary={summary} {...(found && found.cycle_s === null && { edge: 'danger' as const })}>
      <div className={styles.fields}>
        {found && found.cycle_s !== null && (
          <div className={styles.figures}>
            <FigureRow figure={`tender/${task.tenderId}/cycle_s`} label={say('plan.figure.round')} value={formatTime(found.cycle_s)} />
            <FigureRow figure={`tender/${task.tenderId}/hand_gpm`} label={say('plan.figure.hand')} value={formatGiven(found.hand_gpm, system)} />
            <FigureRow figure={`tender/${task.tenderId}/arrive_s`} label={say('plan.figure.arrives')} value={found.arrive_s === null ? say('quantity.unknown') : formatFrom(found.arrive_s)} />
          </div>
        )}
        <ItemFields docId={plan.id} docKind="plan" collection="tenders" item={task}>
          {(plan.fillSites.length > 1 || task.fillSiteId) && <ItemChoice field="fillSiteId" label={say('plan.card.fill')} none={names(sites.fillSiteId ?? '') ?? say('plan.card.none')} choices={plan.fillSites.map(({ id, name: label }) => ({ value: id as string, label }))} />}
          {plan.fillSites.length > 1 && <ItemCheck field="choosesFill" hint={say('plan.hint.chooses')} />}
          {(plan.dumpSites.length > 1 || task.dumpSiteId) && <ItemChoice field="dumpSiteId" label={say('plan.card.dump')} none={names(sites.dumpSiteId ?? '') ?? say('plan.card.none')} choices={plan.dumpSites.map(({ id, name: label }) => ({ value: id as string, label }))} />}
          {plan.dumpSites.length > 1 && <ItemCheck field="choosesDump" hint={say('plan.hint.chooses')} />}
        </ItemFields>
        {tender && (
          <ItemFields docId={district.id} docKind="district" collection="apparatus" item={tender}>
            <ItemChoice field="stationId" label={say('plan.station')} none={say('plan.station.none')} choices={district.stations.map(({ id, name: label }) => ({ value: id as string, label }))} />
            <ItemQuantity field="tank_gal" />
            <ItemQuantity field="dump_gpm" standIn={tender.dumpBy === 'jet' ? defaults.jetDump_gpm : tender.dumpBy === 'pump' ? defaults.pumpDump_gpm : defaults.tenderDump_gpm} />
            <ItemQuantity field="fillLimit_gpm" standIn={defaults.tenderFillLimit_gpm} />
          </ItemFields>
        )}
        <Fold title={say('plan.more-fields')} note={say('plan.more.tender')} setCount={countSet(task, ['delay_s', 'withdraw_s']) + (tender ? countSet(tender, ['dumpBy', 'dumpOpening_in', 'fillInletCount', 'full_lb']) : 0)}>
          <ItemFields docId={plan.id} docKind="plan" collection="tenders" item={task}>
            <ItemQuantity field="delay_s" label={say('plan.delay')} absent={say('entry.none.nothing')} />
            <ItemQuantity field="withdraw_s" label={say('plan.withdraw')} hint={say('plan.hint.withdraw')} absent={say('entry.none.never')} />
          </ItemFields>
          {tender && (
            <ItemFields docId={district.id} docKind="district" collection="apparatus" item={tender}>
              <ItemChoice field="dumpBy" none={say('choice.dumpBy.none')} choices={(['gravity', 'jet', 'pump'] as const).map((value) => ({ value, label: say(`choice.dumpBy.${value}`) }))} />
              {(tender.dumpBy ?? 'gravity') === 'gravity' && <ItemQuantity field="dumpOpening_in" hint={say('plan.hint.dump-opening')} />}
              <ItemCount field="fillInletCount" standIn={1} hint={say('plan.hint.inlets')} />
              <ItemQuantity field="full_lb" />
            </ItemFields>
          )}
        </Fold>
        <Button
          look="danger" size="s" icon="trash" label={say('plan.take-out')}
          onClick={() => { editPlan({ kind: 'removeItem', collection: 'tenders', id: task.id }, say('plan.removed', { name })) }}
        />
      </div>
    </Card>
  )
}
