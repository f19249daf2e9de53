'use client'

import { defaults, findHazardFlow_gpm } from '@/lib/supply'
import { ItemFields } from '../_fields/item-context'
import { ItemChoice, ItemQuantity } from '../_fields/item-inputs'
import { formatAsked, say } from '../_text'
import { ChoiceField } from '../_ui/choice-field'
import { Fold } from '../_ui/fold'
import { QuantityField } from '../_ui/quantity-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import { countSet } from './count-set'
import { DemandStages } from './demand-stages'
import { FigureRow } from './figure-row'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'
import { UnitChoice } from './unit-choice'

/** What burns, what it needs, and the engine that holds it until supply is ready. */
export function FireCard() {
  const { district, plan, result, editPlan, editBoth, newId } = usePlanBoard()
  const [system] = useUnitSystem()
  const [stage, ...later] = plan.demand ?? []
  const hazard = district.hazards.find(({ id }) => id === plan.hazardId)
  const hazard_gpm = findHazardFlow_gpm(hazard)
  return (
    <ItemFields docId={plan.id} docKind="plan" item={plan}>
      <div className={styles.fields}>
        <ChoiceField
          label={say('plan.hazard')} none={say('plan.hazard.none')} value={plan.hazardId as string | undefined}
          choices={district.hazards.map(({ id, name }) => ({ value: id as string, label: name }))}
          onCommit={(id) => { editPlan({ kind: 'setFields', set: { hazardId: id ?? null } }, say('plan.hazard')) }}
        />
        {result && result.needed_gpm !== null && (
          <div className={styles.figures}><FigureRow figure="needed_gpm" label={say('result.figure.needed_gpm')} value={formatAsked(result.needed_gpm, system)} /></div>
        )}
        <QuantityField
          label={say('plan.demand')} unit="gpm" value={stage?.flow_gpm} hasMark={false} min={0} max={20000} {...(hazard_gpm !== undefined && { hint: say('plan.demand.hint') })}
          standIn={hazard_gpm === undefined ? undefined : { value: hazard_gpm, mark: 'computed' }}
          onCommit={({ value }) => {
            const demand = value === undefined ? null : [{ id: stage?.id ?? newId(), from_s: stage?.from_s ?? 0, flow_gpm: value }, ...later]
            editPlan(demandEdits(stage?.id, demand), say('plan.demand'))
          }}
        />
        <DemandStages hazard_gpm={hazard_gpm} />
        <UnitChoice
          label={say('plan.first-due')} none={say('plan.first-due.none')} kind="pumper" value={plan.firstDueId}
          onChoose={(id, before) => { editBoth({ district: before?.district ?? [], plan: [{ kind: 'setFields', set: { firstDueId: id ?? null } }] }, say('plan.first-due')) }}
        />
        <ItemQuantity field="firstLine_s" standIn={defaults.firstLine_s} />
        <ItemQuantity field="duration_s" label={say('plan.duration')} standIn={defaults.duration_s} />
        <Fold title={say('plan.more-fields')} note={say('plan.more.fire')} setCount={countSet(plan, ['season', 'reserve_s', 'restAfter_s', 'rest_s'])}>
          <ItemChoice field="season" none={say('choice.season.none')} choices={(['usual', 'dry', 'drought'] as const).map((value) => ({ value, label: say(`choice.season.${value}`) }))} />
          <ItemQuantity field="reserve_s" standIn={defaults.reserve_s} />
          <ItemQuantity field="restAfter_s" standIn={(plan.duration_s ?? 0) >= defaults.restAfter_s.value ? defaults.restAfter_s : undefined} absent={say('entry.none.nothing')} hint={say('plan.hint.rest')} />
          <ItemQuantity field="rest_s" standIn={defaults.rest_s} />
        </Fold>
      </div>
    </ItemFields>
  )
}

function demandEdits(oldId: string | undefined, demand: readonly { id: string; from_s: number; flow_gpm: number }[] | null) {
  const [first] = demand ?? []
  if (!first) return oldId === undefined ? [] : [{ kind: 'removeItem' as const, collection: 'demand', id: oldId }]
  return [{ kind: 'addItem' as const, collection: 'demand', item: first, at: 0 }]
}
