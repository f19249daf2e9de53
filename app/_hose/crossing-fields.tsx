'use client'

import type { Lay } from '@/lib/plan'
import type { RoadCrossing } from '@/lib/roads'
import { useItem } from '../_fields/item-context'
import { usePlanBoard } from '../_plan/plan-context'
import { fieldLabel, say } from '../_text'
import '../_text/areas/hose'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { QuantityField } from '../_ui/quantity-field'
import { useToast } from '../_ui/toast'
import styles from './hose.module.css'
import { findLayCrossings } from './use-hose-study'

const MOST_CROSSINGS = 40
/** A crossing found so near one already listed is that one. */
const SAME_FT = 60
const protections = ['bridge', 'ramp', 'closed'] as const

/** Where the hose crosses roads, and what keeps wheels off it. */
export function CrossingFields({ lay }: { lay: Lay }) {
  const { set } = useItem()
  const { district, plan, newId } = usePlanBoard()
  const toast = useToast()
  const crossings = lay.crossings ?? []
  const setAll = (next: typeof crossings, label: string) => { set({ crossings: next.length > 0 ? next : undefined }, undefined, label) }
  const find = () => {
    findLayCrossings({ district, plan, layId: lay.id }).then(
      (found) => {
        const more = found.filter(({ at_ft }) => crossings.every((one) => Math.abs(one.at_ft - at_ft) > SAME_FT))
        if (more.length > 0) setAll([...crossings, ...more.map((one) => listed(one, newId()))].sort((a, b) => a.at_ft - b.at_ft).slice(0, MOST_CROSSINGS), say('hose.crossing.find'))
        toast({ text: say('hose.crossing.found', { count: more.length }) })
      },
      (error: unknown) => { toast({ text: say('hose.failed', { reason: String(error) }), look: 'danger' }) },
    )
  }
  return (
    <div className={styles.fields}>
      <p className={styles.quiet}>{say('hose.crossing.hint')}</p>
      {crossings.map((one, index) => {
        const number = index + 1
        return (
          <fieldset key={one.id} className={styles.part}>
            <legend className={styles.legend}>{one.road === undefined ? say('hose.crossing', { number }) : say('hose.crossing.of', { number, road: one.road })}</legend>
            <QuantityField
              label={fieldLabel('crossingAt_ft')} unit="ft" hasMark={false} min={0} max={100_000} isRequired value={one.at_ft}
              onCommit={({ value }) => { if (value !== undefined) setAll(crossings.with(index, { ...one, at_ft: value }), say('hose.crossing', { number })) }}
            />
            <ChoiceField
              label={say('hose.crossing.by')} value={one.protection ?? 'bridge'} choices={protections.map((value) => ({ value, label: say(`hose.crossing.by.${value}`) }))}
              onCommit={(protection) => { if (protection !== undefined) setAll(crossings.with(index, { ...one, protection }), say('hose.crossing', { number })) }}
            />
            <Button look="quiet" size="s" icon="trash" label={say('hose.crossing.remove', { number })} onClick={() => { setAll(crossings.toSpliced(index, 1), say('hose.crossing.remove', { number })) }} />
          </fieldset>
        )
      })}
      {crossings.length < MOST_CROSSINGS && (
        <div className={styles.buttons}>
          <Button look="quiet" size="s" icon="add" label={say('hose.crossing.add')} onClick={() => { setAll([...crossings, { id: newId(), at_ft: 0 }], say('hose.crossing.add')) }} />
          {district.roads && <Button look="quiet" size="s" icon="plan" label={say('hose.crossing.find')} onClick={find} />}
        </div>
      )}
    </div>
  )
}

const listed = ({ at_ft, name }: RoadCrossing, id: string) => ({ id, at_ft: Math.round(at_ft), ...(name && { road: name.slice(0, 120) }) })
