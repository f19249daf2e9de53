'use client'

import type { Lay, LayStretch } from '@/lib/plan'
import type { HoseLayAnswer } from '@/lib/supply'
import type { Evidence } from '@/lib/evidence'
import { ItemContextProvider, useItem } from '../_fields/item-context'
import { ItemCheck, ItemCount, ItemQuantity } from '../_fields/item-inputs'
import { ItemNumber } from '../_fields/item-number'
import { usePlanBoard } from '../_plan/plan-context'
import { formatQuantity, listWords, say } from '../_text'
import '../_text/areas/hose'
import { Button } from '../_ui/button'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './hose.module.css'

const MOST_STRETCHES = 20

/** The hose of a lay, stretch by stretch, each with its own evidence. */
export function StretchFields({ lay, answer }: { lay: Lay; answer: HoseLayAnswer | undefined }) {
  const outer = useItem()
  const { district, newId } = usePlanBoard()
  const [system] = useUnitSystem()
  const stock = new Map<number, number>()
  for (const item of district.equipment) if (item.kind === 'hose') stock.set(item.size_in, (stock.get(item.size_in) ?? 0) + item.length_ft)
  const list = [...stock].sort((a, b) => b[0] - a[0]).map(([size_in, length_ft]) => say('hose.stretch.stock-one', { length: formatQuantity(length_ft, 'ft', system), size: formatQuantity(size_in, 'in', system) }))
  const setAll = (stretches: readonly LayStretch[], label?: string) => { outer.set({ stretches }, undefined, label) }
  return (
    <div className={styles.fields}>
      {list.length > 0 && <p className={styles.quiet}>{say('hose.stretch.stock', { list: listWords(list) })}</p>}
      {lay.stretches.map((stretch, index) => {
        const laid = answer?.stretches.find(({ id }) => id === stretch.id)
        const number = index + 1
        return (
          <fieldset key={stretch.id} className={styles.part}>
            <legend className={styles.legend}>{say('hose.stretch', { number })}</legend>
            <ItemContextProvider
              value={{
                ...outer, part: 'stretches', item: stretch,
                set: (fields, evidence) => { setAll(lay.stretches.with(index, changed(stretch, fields, evidence))) },
              }}
            >
              <div className={styles.fields}>
                <ItemQuantity field="size_in" />
                <ItemCount field="lineCount" standIn={1} />
                <ItemQuantity field="length_ft" hint={say('hose.stretch.rest')} {...(laid && { standIn: { value: Math.round(laid.length_ft), mark: 'computed' as const, source: say('hose.stretch.rest') } })} />
                <ItemNumber field="coefficient" {...(laid && laid.coefficientFrom !== 'entered' && { standIn: { value: laid.coefficient, mark: 'handbook' as const, source: say(`hose.of.${laid.coefficientFrom}`) } })} />
                <ItemCheck field="isByHand" />
              </div>
            </ItemContextProvider>
            {lay.stretches.length > 1 && (
              <Button look="quiet" size="s" icon="trash" label={say('hose.stretch.remove', { number })} onClick={() => { setAll(lay.stretches.toSpliced(index, 1), say('hose.stretch.remove', { number })) }} />
            )}
          </fieldset>
        )
      })}
      {lay.stretches.length < MOST_STRETCHES && (
        <Button
          look="quiet" size="s" icon="add" label={say('hose.stretch.add')}
          onClick={() => { setAll([...lay.stretches, { id: newId(), size_in: lay.stretches.at(-1)?.size_in ?? 4 }], say('hose.stretch.add')) }}
        />
      )}
    </div>
  )
}

/** A stretch with fields set or taken away; its size stays. */
function changed(stretch: LayStretch, fields: Readonly<Record<string, unknown>>, evidence: Readonly<Record<string, Evidence | undefined>> | undefined): LayStretch {
  const next: Record<string, unknown> = { ...stretch }
  for (const [field, value] of Object.entries(fields)) {
    if (value !== undefined) next[field] = value
    else if (field !== 'size_in') delete next[field]
  }
  const known = Object.fromEntries(Object.entries({ ...stretch.evidence, ...evidence }).filter(([, mark]) => mark !== undefined))
  delete next.evidence
  return { ...(next as LayStretch), ...(Object.keys(known).length > 0 && { evidence: known as Record<string, Evidence> }) }
}
