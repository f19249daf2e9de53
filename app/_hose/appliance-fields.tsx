'use client'

import type { Lay } from '@/lib/plan'
import { useItem } from '../_fields/item-context'
import { usePlanBoard } from '../_plan/plan-context'
import { fieldLabel, say } from '../_text'
import '../_text/areas/hose'
import { Button } from '../_ui/button'
import { QuantityField } from '../_ui/quantity-field'
import styles from './hose.module.css'

const MOST_APPLIANCES = 40

/** Wyes, siameses, manifolds and master stream devices along a lay. */
export function ApplianceFields({ lay }: { lay: Lay }) {
  const { set } = useItem()
  const { newId } = usePlanBoard()
  const appliances = lay.appliances ?? []
  const setAll = (next: typeof appliances, label: string) => { set({ appliances: next.length > 0 ? next : undefined }, undefined, label) }
  const add = (kind: 'fitting' | 'master-stream') => { setAll([...appliances, { id: newId(), kind, at_ft: 0 }], say(kind === 'fitting' ? 'hose.appliance.add' : 'hose.appliance.add-stream')) }
  return (
    <div className={styles.fields}>
      {appliances.map((one, index) => {
        const number = index + 1
        return (
          <fieldset key={one.id} className={styles.part}>
            <legend className={styles.legend}>{say(`hose.appliance.kind.${one.kind}`)}</legend>
            <QuantityField
              label={fieldLabel('at_ft')} unit="ft" hasMark={false} min={0} max={100_000} isRequired value={one.at_ft}
              onCommit={({ value }) => { if (value !== undefined) setAll(appliances.with(index, { ...one, at_ft: value }), say('hose.appliance', { number })) }}
            />
            <Button look="quiet" size="s" icon="trash" label={say('hose.appliance.remove', { number })} onClick={() => { setAll(appliances.toSpliced(index, 1), say('hose.appliance.remove', { number })) }} />
          </fieldset>
        )
      })}
      {appliances.length < MOST_APPLIANCES && (
        <div className={styles.buttons}>
          <Button look="quiet" size="s" icon="add" label={say('hose.appliance.add')} onClick={() => { add('fitting') }} />
          <Button look="quiet" size="s" icon="add" label={say('hose.appliance.add-stream')} onClick={() => { add('master-stream') }} />
        </div>
      )}
    </div>
  )
}
