'use client'

import { isWorking } from '@/lib/supply/working'
import type { Working, WorkingInput } from '@/lib/supply/working'
import { fieldLabel, fieldName, formatNumber, formatQuantity, isTextKey, plainSource, say } from '../_text'
import type { NameOf, UnitSystem } from '../_text'
import '../_text/areas/law'
import { Button } from './button'
import { EvidenceChip } from './evidence-chip'
import { useUnitSystem } from './unit-system-context'
import styles from './working-panel.module.css'

/** Names of the items whose numbers went in. */
export type WorkingNames = NameOf

export type WorkingPanelProps = { title: string; working: Working; names: WorkingNames; onClose?: () => void }

/** How a figure came about: formula, value, and the inputs down to what somebody entered. Stands in place. */
export function WorkingPanel({ title, working, names, onClose }: WorkingPanelProps) {
  return (
    <section className={styles.panel} aria-label={say('working.heading', { figure: title })}>
      <header className={styles.head}>
        <h3 className={styles.title}>{say('working.heading', { figure: title })}</h3>
        {onClose && <Button look="quiet" size="s" icon="close" label={say('working.close')} onClick={onClose} />}
      </header>
      <Law working={working} />
      <Inputs inputs={working.inputs} names={names} />
    </section>
  )
}

function Law({ working }: { working: Working }) {
  const [system] = useUnitSystem()
  const name = `law.${working.law}`
  const formula = `law.${working.law}.formula`
  return (
    <div className={styles.law}>
      <p>
        <span className={styles.lawName}>{isTextKey(name) ? say(name) : working.law}</span>
        {' = '}
        <strong>{shownValue(working, system)}</strong>
      </p>
      {isTextKey(formula) && <p className={styles.formula}>{say(formula)}</p>}
      {working.source && <p className={styles.source}>{say('working.from-source', { source: plainSource(working.source) })}</p>}
    </div>
  )
}

function Inputs({ inputs, names }: { inputs: readonly WorkingInput[]; names: WorkingNames }) {
  const [system] = useUnitSystem()
  if (inputs.length === 0) return null
  return (
    <ul className={styles.inputs}>
      {inputs.map((input, index) => {
        const { from } = input
        return (
          <li key={`${input.symbol} ${index}`} className={styles.input}>
            <div className={styles.line}>
              <span>{fieldLabel(input.symbol)}</span>
              <span className={styles.value}>{shownValue(input, system)}</span>
              {isWorking(from) ? <EvidenceChip mark="computed" /> : <EvidenceChip mark={from.mark} />}
              {!isWorking(from) && <span className={styles.origin}>{[names(from.itemId), plainSource(from.source)].filter(Boolean).join(', ')}</span>}
            </div>
            {isWorking(from) && (
              <details className={styles.nested}>
                <summary className={styles.how}>{say('working.how', { symbol: fieldName(input.symbol) })}</summary>
                <Law working={from} />
                <Inputs inputs={from.inputs} names={names} />
              </details>
            )}
          </li>
        )
      })}
    </ul>
  )
}

function shownValue({ value, unit }: Pick<Working, 'value' | 'unit'>, system: UnitSystem): string {
  return unit === '' ? formatNumber(value, 4) : formatQuantity(value, unit, system, { style: 'working' })
}
