'use client'

import dynamic from 'next/dynamic'
import { useMemo } from 'react'
import { broughtBy_gal, costMost, reviewCsv, type EventsReview } from '@/lib/review'
import { isCounted, type FieldLog } from '@/lib/plan'
import { StringChart } from '../_charts/string-chart'
import { usePlan } from '../_client'
import { Shell } from '../_frame/shell'
import { displayUnit, formatAsked, formatDay, formatGiven, formatMinutes, formatQuantity, formatTime, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/review'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Caution } from '../_ui/caution'
import { DataTable } from '../_ui/data-table'
import { EmptyState } from '../_ui/empty-state'
import { FigureTile } from '../_ui/figure-tile'
import { ProgressBar } from '../_ui/progress-bar'
import { saveFile } from '../_ui/save-file'
import { UndoButtons } from '../_frame/undo-buttons'
import { logHref } from '../_links/log-href'
import { reviewHref } from '../_links/review-href'
import { useUnitSystem } from '../_ui/unit-system-context'
import { AssumptionList } from './assumption-list'
import { CauseTable } from './cause-table'
import { CriteriaPart } from './criteria-part'
import { FlowCharts } from './flow-charts'
import styles from './review.module.css'
import { useReview } from './use-review'

/** It tries what it offers on the documents, by their schemas: with them it comes after the page. */
const MeasureList = dynamic(() => import('./measure-list').then((made) => made.MeasureList), { ssr: false })

/** What a log achieved, against its plan and the need, why, and what there is to learn from it. */
export function ReviewScreen({ districtId, logId }: { districtId: string; logId: string }) {
  const view = useReview(districtId, logId)
  const { status, log, district, review, names, events, progressShare } = view
  const plan = usePlan(log?.planId).doc
  const [system] = useUnitSystem()
  return (
    <Shell {...(district && { district: { id: districtId, name: district.name } })} screen="log" actions={<UndoButtons />}>
      {!log || !review || status !== 'ready'
        ? (
          <EmptyState title={say(`review.status.${status === 'ready' ? 'loading' : status}`)}>
            {progressShare !== undefined && <ProgressBar label={say('review.working')} share={progressShare} />}
            <ButtonLink href={reviewHref(districtId)} label={say('review.all')} />
          </EmptyState>
        )
        : (
          <div className={styles.page}>
            <header className={styles.head}>
              <div className={styles.titles}>
                <h1 className={styles.title}>{say('review.title', { name: log.name })}</h1>
                <p className={styles.quiet}>{say('review.subtitle', { date: formatDay(log.date), plan: log.planned?.plan.name ?? 'none' })}</p>
              </div>
              <div className={styles.buttons}>
                <ButtonLink size="s" icon="arrowLeft" href={logHref(districtId, logId)} label={say('review.log')} />
                <ButtonLink size="s" href={reviewHref(districtId)} label={say('review.all')} />
                <Button size="s" label={say('review.csv')} onClick={() => { saveFile(`${log.date}-${log.id}-review.csv`, reviewCsv(review, names), 'text/csv;charset=utf-8') }} />
                <Button size="s" icon="print" label={say('review.print')} onClick={() => { print() }} />
              </div>
            </header>
            <Answer review={review} system={system} />
            {review.loads.length === 0 ? <EmptyState title={say('review.empty')} text={say('review.empty.text')} /> : <Found log={log} review={review} names={names} />}
            <CriteriaPart review={review} logName={log.name} date={formatDay(log.date)} />
            <MeasureList measures={review.measures} log={log} events={events} district={district} plan={plan} names={names} />
            <AssumptionList review={review} names={names} />
            <Caution title={say('caution.title')} kinds={['planning-aid']} />
          </div>
        )}
    </Shell>
  )
}

/** The answer in a sentence, and the part that cost most. */
function Answer({ review, system }: { review: EventsReview; system: UnitSystem }) {
  const { achieved_gpm, planned_gpm, expected_gpm, needed_gpm, window, difference, held_gpm } = review
  if (achieved_gpm === undefined || !window) return null
  const worst = difference && costMost(difference)
  return (
    <>
      <p className={styles.answer}>
        {say('review.answer', { flow: formatGiven(achieved_gpm, system, needed_gpm), span: formatMinutes(window.end_s - window.from_s) })}
        {' '}
        {planned_gpm !== undefined && say('review.answer.planned', { flow: formatGiven(planned_gpm, system, needed_gpm) })}
        {' '}
        {worst && say('review.answer.cause', { cause: say(`review.cause.${worst.cause}`), flow: formatQuantity(-worst.gpm, 'gpm', system, { digits: 0 }) })}
        {difference && !worst && say('review.answer.none', { bound: formatQuantity(Math.ceil(difference.bound_gpm), 'gpm', system, { digits: 0 }) })}
      </p>
      <div className={styles.figures}>
        <FigureTile label={say('review.achieved')} value={formatGiven(achieved_gpm, system, needed_gpm)} look="water" note={say('review.achieved.note')} />
        <FigureTile label={say('review.planned')} value={formatGiven(planned_gpm, system, needed_gpm)} note={say('review.planned.note', { expected: expected_gpm === undefined ? 'none' : formatGiven(expected_gpm, system, needed_gpm) })} />
        <FigureTile label={say('review.needed')} value={formatAsked(needed_gpm, system)} note={say('review.needed.note')} />
        <FigureTile label={say('review.held')} value={formatGiven(held_gpm, system, needed_gpm)} note={say('review.held.note')} />
      </div>
    </>
  )
}

function Found({ log, review, names }: { log: FieldLog; review: EventsReview; names: NameOf }) {
  const [system] = useUnitSystem()
  const { difference, chart, plannedChart, end_s, window, achieved_gpm, loads } = review
  const shared_s = Math.max(600, end_s)
  const rows = useMemo(() => review.tenders.map((tender) => ({ ...tender, name: names(tender.id) ?? tender.id })), [review, names])
  return (
    <>
      <div className={styles.part}>
        <h2 className={styles.heading}>{say('review.causes')}</h2>
        {difference ? (
          <>
            <p className={styles.quiet}>{say('review.causes.text')}</p>
            {log.planned?.plan.hoseLays?.some(isCounted) && <p className={styles.quiet}>{say('review.causes.hose')}</p>}
            <p className={styles.quiet}>{say('review.causes.steps', { unit: displayUnit('gpm', system).symbol, planned: formatGiven(difference.planned_gpm, system, review.needed_gpm), achieved: formatGiven(difference.achieved_gpm, system, review.needed_gpm) })}</p>
            <CauseTable difference={difference} />
          </>
        ) : <p>{say(log.planned ? 'review.causes.blocked' : 'review.causes.no-plan')}</p>}
      </div>
      <FlowCharts review={review} />
      <section className={styles.part} aria-labelledby="review-lines">
        <h2 className={styles.heading} id="review-lines">{say('review.lines')}</h2>
        <div className={styles.together}><h3>{say('review.lines.logged')}</h3><StringChart chart={chart} names={names} shared_s={shared_s} /></div>
        {plannedChart && <div className={styles.together}><h3>{say('review.lines.planned')}</h3><StringChart chart={plannedChart} names={names} shared_s={shared_s} /></div>}
      </section>
      <div className={styles.part}>
        <h2 className={styles.heading}>{say('review.tenders')}</h2>
        {window && (
          <p className={styles.quiet}>
            {say('review.tenders.text', {
              all: formatQuantity(loads.reduce((sum, { given_gal }) => sum + given_gal, 0), 'gal', system, { style: 'headline' }), end: formatMinutes(end_s, 'down'),
              within: formatQuantity(broughtBy_gal(loads, window.end_s), 'gal', system, { style: 'headline' }), from: formatMinutes(window.from_s), until: formatMinutes(window.end_s), flow: formatGiven(achieved_gpm, system, review.needed_gpm),
            })}
          </p>
        )}
        <DataTable
          caption={say('review.tenders')} isCaptionHidden rows={rows} rowKey={({ id }) => id}
          columns={[
            { key: 'name', head: say('review.tender'), cell: ({ name }) => name, sortBy: ({ name }) => name },
            { key: 'loads', head: say('review.tender.loads'), isNumber: true, cell: ({ loadCount }) => String(loadCount), sortBy: ({ loadCount }) => loadCount },
            { key: 'given', head: say('review.tender.given'), isNumber: true, cell: ({ given_gal }) => formatQuantity(given_gal, 'gal', system, { style: 'headline' }), sortBy: ({ given_gal }) => given_gal },
            { key: 'round', head: say('review.tender.round'), isNumber: true, cell: ({ round_s }) => (round_s === undefined ? say('quantity.unknown') : formatTime(Math.round(round_s))), sortBy: ({ round_s }) => round_s },
            { key: 'waited', head: say('review.tender.waited'), isNumber: true, cell: ({ waited_s }) => (waited_s === undefined ? say('quantity.unknown') : formatTime(Math.round(waited_s))), sortBy: ({ waited_s }) => waited_s },
          ]}
        />
      </div>
    </>
  )
}
