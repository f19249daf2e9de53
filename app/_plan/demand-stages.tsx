'use client'

import type { DemandStage } from '@/lib/plan'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { QuantityField } from '../_ui/quantity-field'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'

/** How much later than the last a new stage is put. */
const NEXT_STAGE_S = 600

/** Flow asked for after the first: from when, how much, as many stages as the attack has. */
export function DemandStages({ hazard_gpm }: { hazard_gpm: number | undefined }) {
  const { plan, editPlan, newId } = usePlanBoard()
  const stages = plan.demand ?? []
  const last = stages.at(-1)
  if (!last && hazard_gpm === undefined) return null
  const put = (stage: DemandStage) => { editPlan({ kind: 'addItem', collection: 'demand', item: stage }, say('plan.stage')) }
  return (
    <fieldset className={styles.set}>
      <legend className={styles.setTitle}>{say('plan.stages')}</legend>
      {stages.slice(1).map((stage, index) => (
        <div key={stage.id} className={styles.stage}>
          <QuantityField
            label={say('plan.stage.from', { number: index + 2 })} unit="s" value={stage.from_s} hasMark={false} min={0} max={172_800} hint={say('plan.stage.from-hint')}
            onCommit={({ value }) => { if (value !== undefined) put({ ...stage, from_s: value }) }}
          />
          <QuantityField
            label={say('plan.stage.flow', { number: index + 2 })} unit="gpm" value={stage.flow_gpm} hasMark={false} min={0} max={20_000}
            onCommit={({ value }) => { if (value !== undefined) put({ ...stage, flow_gpm: value }) }}
          />
          <Button
            look="quiet" size="s" icon="trash" label={say('plan.stage.remove', { number: index + 2 })}
            onClick={() => { editPlan({ kind: 'removeItem', collection: 'demand', id: stage.id }, say('plan.stage')) }}
          />
        </div>
      ))}
      <div className={styles.buttons}>
        <Button
          look="quiet" size="s" icon="add" label={say('plan.stage.add')}
          onClick={() => {
            // Without a flow of the plan's own the hazard's is the first stage.
            const first = last ?? { id: newId(), from_s: 0, flow_gpm: hazard_gpm ?? 0 }
            const next = { id: newId(), from_s: first.from_s + NEXT_STAGE_S, flow_gpm: first.flow_gpm }
            editPlan((last ? [next] : [first, next]).map((item) => ({ kind: 'addItem' as const, collection: 'demand', item })), say('plan.stage'))
          }}
        />
      </div>
    </fieldset>
  )
}
