'use client'

import { useMemo } from 'react'
import { DEPENDABLE_SHARE } from '@/lib/doubt'
import { calibrate, LEAST_LOGS, promisedFlow_gpm } from '@/lib/review'
import { Plot } from '../_charts/plot'
import { formatDay, formatGiven, formatNumber, formatShare, say } from '../_text'
import '../_text/areas/review'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './review.module.css'
import type { Reviewed } from './use-all-reviews'

/** Whether flows that plans promised were held in their logs, chance by chance; few logs say so. */
export function CalibrationPart({ reviewed }: { reviewed: readonly Reviewed[] }) {
  const [system] = useUnitSystem()
  const promised = useMemo(() => reviewed.flatMap(({ log, promise }) => (promise ? [{ log, promise }] : [])), [reviewed])
  const rows = useMemo(() => calibrate(promised.map(({ promise }) => promise)), [promised])
  const count = rows[0]?.count ?? 0
  const dependable = rows.find(({ promisedShare }) => promisedShare === DEPENDABLE_SHARE)
  const percent = (shares: readonly number[]) => shares.map((share) => 100 * share)
  return (
    <section className={styles.part} aria-labelledby="review-promises">
      <h2 className={styles.heading} id="review-promises">{say('review.promises')}</h2>
      <p className={styles.quiet}>{say('review.promises.text')}</p>
      {dependable && <p>{say('review.promises.found', { held: dependable.heldCount, count, low: formatShare(dependable.lowShare), high: formatShare(dependable.highShare) })}</p>}
      {count < LEAST_LOGS && <p>{say('review.promises.few', { count, least: LEAST_LOGS })}</p>}
      {count >= LEAST_LOGS && (
        <Plot
          title={say('review.promises.plot')} heard={say('review.promises.heard', { count })} yTop={100} isBand
          x={percent(rows.map(({ promisedShare }) => promisedShare))} xWords={(value) => formatNumber(Math.round(value))} xLabel={say('review.promises.x')} yLabel={say('review.promises.y')}
          lines={[
            { label: say('review.promises.low'), values: percent(rows.map(({ lowShare }) => lowShare)), colour: '--water', width: 1, dash: [8, 4] },
            { label: say('review.promises.high'), values: percent(rows.map(({ highShare }) => highShare)), colour: '--water', width: 1, dash: [2, 3] },
            { label: say('review.promises.held'), values: percent(rows.map(({ heldShare }) => heldShare)), colour: '--water', width: 3 },
            { label: say('review.promises.kept'), values: percent(rows.map(({ promisedShare }) => promisedShare)), colour: '--ink', dash: [3, 3] },
          ]}
          table={{
            head: [say('review.promises.x'), say('review.promises.held'), say('review.promises.low'), say('review.promises.high')],
            rows: rows.map(({ promisedShare, heldShare, lowShare, highShare }) => [promisedShare, heldShare, lowShare, highShare].map((share) => formatShare(share))),
          }}
        />
      )}
      {promised.length > 0 && (
        <DataTable
          caption={say('review.promises.logs')} rows={promised} rowKey={({ log }) => log.id}
          columns={[
            { key: 'log', head: say('review.log'), cell: ({ log }) => say('review.log.on', { name: log.name, date: formatDay(log.date) }) },
            { key: 'promised', head: say('review.promises.promised'), isNumber: true, cell: ({ promise }) => formatGiven(promisedFlow_gpm(promise.nights_gpm, DEPENDABLE_SHARE), system) },
            { key: 'held', head: say('review.held'), isNumber: true, cell: ({ promise }) => formatGiven(promise.held_gpm, system) },
            { key: 'kept', head: say('review.promises.kept-head'), cell: ({ promise }) => say(promise.isUntested ? 'review.promises.untested' : promise.held_gpm >= promisedFlow_gpm(promise.nights_gpm, DEPENDABLE_SHARE) ? 'review.promises.yes' : 'review.promises.no') },
          ]}
        />
      )}
    </section>
  )
}
