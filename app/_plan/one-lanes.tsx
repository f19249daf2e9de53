'use client'

import { defaults } from '@/lib/supply'
import type { OneLane } from '@/lib/plan'
import { ItemFields } from '../_fields/item-context'
import { ItemChoice, ItemCount, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { ItemNumber } from '../_fields/item-number'
import { formatTime, say } from '../_text'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'

/** Stretches between the sites where two vehicles cannot pass. */
export function OneLanes() {
  const { plan, editPlan, newId } = usePlanBoard()
  const stretches = plan.oneLanes ?? []
  const [fill] = plan.fillSites
  const [dump] = plan.dumpSites
  return (
    <>
      {stretches.map((stretch) => <OneLaneCard key={stretch.id} stretch={stretch} />)}
      {fill && dump && (
        <div className={styles.buttons}>
          <Button
            look="quiet" size="s" icon="add" label={say('plan.one-lane.add')}
            onClick={() => {
              const item = { id: newId(), name: say('plan.one-lane.name', { number: stretches.length + 1 }), fillSiteId: fill.id, dumpSiteId: dump.id }
              editPlan({ kind: 'addItem', collection: 'oneLanes', item }, say('plan.one-lane.add'))
            }}
          />
        </div>
      )}
    </>
  )
}

function OneLaneCard({ stretch }: { stretch: OneLane }) {
  const { plan, editPlan } = usePlanBoard()
  return (
    <Card title={stretch.name} level={4} summary={say('plan.one-lane.summary', { time: formatTime(stretch.pass_s ?? defaults.oneLane_s.value) })}>
      <div className={styles.fields}>
        <ItemFields docId={plan.id} docKind="plan" collection="oneLanes" item={stretch}>
          <ItemText field="name" isRequired />
          <ItemChoice field="fillSiteId" label={say('plan.card.fill')} choices={plan.fillSites.map(({ id, name }) => ({ value: id as string, label: name }))} />
          <ItemChoice field="dumpSiteId" label={say('plan.card.dump')} choices={plan.dumpSites.map(({ id, name }) => ({ value: id as string, label: name }))} />
          <ItemQuantity field="pass_s" standIn={defaults.oneLane_s} />
          <ItemNumber field="alongShare" isShare hint={say('plan.one-lane.along-hint')} standIn={{ value: 0.5, mark: 'assumed', source: say('plan.one-lane.middle') }} />
          <ItemCount field="passingPlaceCount" standIn={0} hint={say('plan.one-lane.hint')} />
        </ItemFields>
        <Button
          look="danger" size="s" icon="trash" label={say('plan.one-lane.remove')}
          onClick={() => { editPlan({ kind: 'removeItem', collection: 'oneLanes', id: stretch.id }, say('plan.one-lane.remove')) }}
        />
      </div>
    </Card>
  )
}
