'use client'

import { useState } from 'react'
import type { ReactNode } from 'react'
import { Icon } from '../_look/icon'
import { joinClasses } from './join-classes'
import shared from '../_look/shared.module.css'
import styles from './data-table.module.css'

export type Column<R> = {
  readonly key: string
  readonly head: string
  /** Unit of the whole column, said once in its head. */
  readonly unit?: string
  readonly isNumber?: boolean
  readonly cell: (row: R) => ReactNode
  /** With it the column can be sorted; absent values go last. */
  readonly sortBy?: (row: R) => number | string | undefined
}

export type DataTableProps<R> = {
  caption: string
  columns: readonly Column<R>[]
  rows: readonly R[]
  rowKey: (row: R) => string
  empty?: ReactNode
  isCaptionHidden?: boolean
}

/** Rows of figures in columns. The first column names the row; wide tables scroll sideways by themselves. */
export function DataTable<R>({ caption, columns, rows, rowKey, empty, isCaptionHidden = false }: DataTableProps<R>) {
  const [sort, setSort] = useState<{ key: string; isDown: boolean }>()
  const sortBy = columns.find(({ key }) => key === sort?.key)?.sortBy
  const sorted = sortBy ? [...rows].sort((a, b) => compare(sortBy(a), sortBy(b), sort?.isDown ?? false)) : rows
  return (
    <div className={styles.scroll} role="region" aria-label={caption} tabIndex={0}>
      <table className={styles.table}>
        <caption className={isCaptionHidden ? shared.heard : styles.caption}>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ key, head, unit, isNumber, sortBy: canSort }) => (
              <th
                key={key}
                scope="col"
                className={joinClasses(isNumber && styles.number)}
                {...(canSort && { 'aria-sort': sort?.key !== key ? 'none' : sort.isDown ? 'descending' : 'ascending' })}
              >
                {canSort
                  ? (
                    <button type="button" className={styles.sort} onClick={() => { setSort({ key, isDown: sort?.key === key && !sort.isDown }) }}>
                      <Head head={head} unit={unit} />
                      <span className={joinClasses(styles.arrow, sort?.key === key && styles.shown, sort?.isDown && styles.down)}><Icon name="chevron" size={12} /></span>
                    </button>
                  )
                  : <Head head={head} unit={unit} />}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sorted.map((row) => (
            <tr key={rowKey(row)}>
              {columns.map(({ key, isNumber, cell }, index) => index === 0
                ? <th key={key} scope="row">{cell(row)}</th>
                : <td key={key} className={joinClasses(isNumber && styles.number)}>{cell(row)}</td>)}
            </tr>
          ))}
          {rows.length === 0 && empty && <tr><td colSpan={columns.length}>{empty}</td></tr>}
        </tbody>
      </table>
    </div>
  )
}

function Head({ head, unit }: { head: string; unit: string | undefined }) {
  return <span>{head}{unit && <span className={styles.unit}> {unit}</span>}</span>
}

function compare(a: number | string | undefined, b: number | string | undefined, isDown: boolean): number {
  if (a === undefined || b === undefined) return a === b ? 0 : a === undefined ? 1 : -1
  const order = typeof a === 'number' && typeof b === 'number' ? a - b : String(a).localeCompare(String(b), 'en', { numeric: true })
  return isDown ? -order : order
}
