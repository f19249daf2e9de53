'use client'

import { useMemo } from 'react'
import type { District } from '@/lib/plan'
import { measureKey } from '@/lib/review'
import { formatDay, say } from '../_text'
import '../_text/areas/review'
import { Fold } from '../_ui/fold'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import { measureWords } from './measure-words'
import styles from './review.module.css'
import type { Reviewed } from './use-all-reviews'
import { namesOfLog } from './use-review'

type Row = { readonly key: string; readonly item: string; readonly what: string; readonly value: string; readonly range: string; readonly log: string; readonly date: string }

/** Every number that logs measured, by apparatus and site, the latest first. */
export function HistoryPart({ reviewed, district }: { reviewed: readonly Reviewed[]; district: District | undefined }) {
  const [system] = useUnitSystem()
  const items = useMemo(() => {
    const rows = reviewed.flatMap(({ log, review }): Row[] => {
      const known = namesOfLog(log, district)
      return review.measures.filter(({ withheld }) => withheld === undefined).map((measure) => ({ key: `${log.id} ${measureKey(measure)}`, ...measureWords(measure, (id) => known.get(id), system), log: log.name, date: log.date }))
    })
    const byItem = new Map<string, Row[]>()
    for (const row of rows) byItem.set(row.item, [...(byItem.get(row.item) ?? []), row])
    return [...byItem].sort(([a], [b]) => a.localeCompare(b, 'en', { numeric: true }))
  }, [reviewed, district, system])
  return (
    <section className={styles.part} aria-labelledby="review-history">
      <h2 className={styles.heading} id="review-history">{say('review.history')}</h2>
      {items.length === 0 && <p>{say('review.history.none')}</p>}
      {items.map(([item, rows]) => (
        <Fold key={item} title={item} note={say('review.history.count', { count: rows.length })}>
          <DataTable
            caption={item} isCaptionHidden rows={rows} rowKey={({ key }) => key}
            columns={[
              { key: 'what', head: say('review.history.what'), cell: ({ what }) => what, sortBy: ({ what }) => what },
              { key: 'value', head: say('review.history.value'), isNumber: true, cell: ({ value }) => value },
              { key: 'range', head: say('review.history.range'), cell: ({ range }) => range },
              { key: 'log', head: say('review.log'), cell: ({ log }) => log, sortBy: ({ log }) => log },
              { key: 'date', head: say('review.history.date'), cell: ({ date }) => formatDay(date), sortBy: ({ date }) => date },
            ]}
          />
        </Fold>
      ))}
    </section>
  )
}
