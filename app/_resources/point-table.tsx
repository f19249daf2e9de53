'use client'

import { useState } from 'react'
import type { Unit } from '@/lib/units'
import { entrySymbol, fieldLabel, formatShare, say } from '../_text'
import '../_text/areas/resources'
import { Button } from '../_ui/button'
import entry from '../_ui/entry.module.css'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './point-table.module.css'
import { QuantityCell } from './quantity-cell'

export type PointColumn<P> = {
  readonly field: Extract<keyof P, string>
  readonly unit: Unit
  readonly min: number
  readonly max: number
  readonly isRequired?: boolean
  readonly standIn?: number
}

type AnyPoint = { readonly testedOn?: string }

export type PointTableProps<P extends AnyPoint> = {
  caption: string
  columns: readonly PointColumn<P>[]
  points: readonly P[]
  /** How far the law fitted to the points is off each of them. */
  residualShares?: readonly (number | undefined)[]
  onChange: (points: readonly P[]) => void
}

/** A pumper's own test points: rows are changed in place, taken away, and added once what a point needs is there. */
export function PointTable<P extends AnyPoint>({ caption, columns, points, residualShares, onChange }: PointTableProps<P>) {
  const [system] = useUnitSystem()
  const [draft, setDraft] = useState<Partial<P>>()
  const [error, setError] = useState<string>()
  const cells = (row: Partial<P>, number: number, put: (next: Partial<P>) => void, isDraft: boolean) => [
    ...columns.map(({ field, unit, min, max, isRequired, standIn }) => (
      <td key={field}>
        <QuantityCell
          label={say('resources.point.cell', { field: fieldLabel(field), number })} unit={unit} min={min} max={max} isRequired={isRequired === true && !isDraft}
          {...(standIn !== undefined && { standIn })} value={row[field] as number | undefined}
          onCommit={(value) => { put(value === undefined ? without(row, field) : { ...row, [field]: value }) }}
        />
      </td>
    )),
    <td key="testedOn">
      <span className={entry.box}>
        <input
          className={entry.input} type="date" aria-label={say('resources.point.cell', { field: fieldLabel('testedOn'), number })} value={row.testedOn ?? ''}
          onChange={(event) => { put(event.target.value === '' ? without(row, 'testedOn') : { ...row, testedOn: event.target.value }) }}
        />
      </span>
    </td>,
  ]
  const keep = () => {
    const lacking = columns.find(({ field, isRequired }) => isRequired && draft?.[field] === undefined)
    if (!draft || lacking) return setError(say('entry.required', { field: fieldLabel(lacking?.field ?? '') }))
    onChange([...points, draft as P])
    setDraft(undefined)
    setError(undefined)
  }
  return (
    <div className={styles.holder}>
      <div className={styles.scroll} role="region" aria-label={caption} tabIndex={0}>
        <table className={styles.table}>
          <caption className={styles.caption}>{caption}</caption>
          {(points.length > 0 || draft) && (
            <thead>
              <tr>
                {columns.map(({ field, unit }) => <th key={field} scope="col">{fieldLabel(field)} <span className={styles.unit}>{entrySymbol(unit, system)}</span></th>)}
                <th scope="col">{fieldLabel('testedOn')}</th>
                {residualShares && <th scope="col">{say('resources.point.off')}</th>}
                <td />
              </tr>
            </thead>
          )}
          <tbody>
            {points.map((point, index) => (
              <tr key={index}>
                {cells(point, index + 1, (next) => { onChange(points.with(index, next as P)) }, false)}
                {residualShares && <td className={styles.residual}>{residualText(residualShares[index])}</td>}
                <td><Button size="s" look="quiet" icon="trash" label={say('resources.point.remove')} onClick={() => { onChange(points.toSpliced(index, 1)) }} /></td>
              </tr>
            ))}
            {draft && (
              <tr>
                {cells(draft, points.length + 1, setDraft, true)}
                {residualShares && <td />}
                <td><Button size="s" icon="check" label={say('resources.point.keep')} onClick={keep} /></td>
              </tr>
            )}
          </tbody>
        </table>
      </div>
      {error && <p className={styles.error} role="alert">{error}</p>}
      <Button
        size="s" look="quiet" icon={draft ? 'close' : 'add'} label={say(draft ? 'kit.cancel' : 'resources.point.add')}
        onClick={() => { setDraft(draft ? undefined : {}); setError(undefined) }}
      />
    </div>
  )
}

const residualText = (share: number | undefined): string => (share === undefined ? say('resources.point.left-out') : `${share > 0 ? '+' : ''}${formatShare(share, 1)}`)

function without<P extends object>(row: P, field: string): P {
  return Object.fromEntries(Object.entries(row).filter(([name]) => name !== field)) as P
}
