'use client'

import { useMemo, useState } from 'react'
import { canTake, measureKey, saysTheSame, storedFor, takeMeasure, takeMeasures, type Measure } from '@/lib/review'
import type { District, FieldLog, Plan, SiteEvent } from '@/lib/plan'
import { findUnit } from '@/lib/units'
import { getClient, mintId } from '../_client'
import { formatShare, say, sayIssue, type NameOf } from '../_text'
import '../_text/areas/review'
import { Button } from '../_ui/button'
import { EvidenceChip } from '../_ui/evidence-chip'
import { Fold } from '../_ui/fold'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useSayDone } from '../_ui/use-say-done'
import { formatMeasured, measureWords } from './measure-words'
import styles from './review.module.css'

export type MeasureListProps = { measures: readonly Measure[]; log: FieldLog; events: readonly SiteEvent[]; district: District | undefined; plan: Plan | undefined; names: NameOf }

/** What the log measured, each to be taken into the district or the plan or left; taking is an edit like any other. */
export function MeasureList({ measures, log, events, district, plan, names }: MeasureListProps) {
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const by = useMemo(() => whoLogged(events), [events])
  const toast = useToast()
  const sayDone = useSayDone()
  const [system] = useUnitSystem()
  const docOf = (measure: Measure) => (measure.doc === 'district' ? district : plan)
  const isTaken = (measure: Measure) => storedFor(docOf(measure)!, measure).evidence?.source === sourceIn(log, measure)
  const offered = measures.filter((measure) => {
    const doc = docOf(measure)
    return measure.withheld === undefined && doc && canTake(doc, measure) && !left.has(measureKey(measure)) && (isTaken(measure) || !saysTheSame(storedFor(doc, measure), measure))
  })
  const open = offered.filter((measure) => measure.field !== 'curvePoints' && !isTaken(measure))
  const takeAll = () => {
    const acts = takeMeasures({ district, plan }, open, (measure) => ({ by, on: log.date, source: sourceIn(log, measure) }), mintId)
    const refused = getClient().act(acts.map(({ doc, bodies }) => ({ docId: doc.id, body: bodies })), { label: say('review.measure.take-all-what', { count: open.length }) })
    if (refused) toast({ text: sayIssue(refused, names, system), look: 'danger' })
    else sayDone(say('review.measure.all-taken', { count: open.length }))
  }
  return (
    <section className={styles.part} aria-labelledby="review-measures">
      <h2 className={styles.heading} id="review-measures">{say('review.measures')}</h2>
      <p className={styles.quiet}>{say('review.measures.text')}</p>
      {offered.length === 0 && <p>{say('review.measures.none')}</p>}
      {open.length > 1 && <div className={styles.actions}><Button size="s" icon="check" label={say('review.measure.take-all', { count: open.length })} onClick={takeAll} /></div>}
      <ul className={styles.measures}>
        {offered.map((measure) => (
          <MeasureRow key={measureKey(measure)} measure={measure} log={log} by={by} doc={docOf(measure)!} names={names} onLeave={() => { setLeft((before) => new Set(before).add(measureKey(measure))) }} />
        ))}
      </ul>
      <WithheldList measures={measures.filter(({ withheld }) => withheld !== undefined)} names={names} />
    </section>
  )
}

/** What was logged and is not sure enough to stand in a plan, each with why. */
function WithheldList({ measures, names }: { measures: readonly Measure[]; names: NameOf }) {
  const [system] = useUnitSystem()
  if (measures.length === 0) return null
  return (
    <Fold onPaper="open" title={say('review.withheld')} note={say('review.history.count', { count: measures.length })}>
      <p className={styles.quiet}>{say('review.withheld.text')}</p>
      <ul className={styles.list}>
        {measures.map((measure) => {
          const { item, what, value, range } = measureWords(measure, names, system)
          return <li key={measureKey(measure)}>{say('review.withheld.row', { item, what, value, range, why: measure.withheld ?? 'once' })}</li>
        })}
      </ul>
    </Fold>
  )
}

function MeasureRow({ measure, log, by, doc, names, onLeave }: { measure: Measure; log: FieldLog; by: string | undefined; doc: District | Plan; names: NameOf; onLeave: () => void }) {
  const toast = useToast()
  const sayDone = useSayDone()
  const [system] = useUnitSystem()
  const { item, what, value, range } = measureWords(measure, names, system)
  const source = sourceIn(log, measure)
  const stored = storedFor(doc, measure)
  const unit = findUnit(measure.field) ?? 's'
  const isTaken = stored.evidence?.source === source
  const title = `${item}: ${what}`
  const take = () => {
    const body = takeMeasure(doc, measure, { by, on: log.date, source }, mintId())
    const refused = body && getClient().edit(doc.id, body, { label: say('review.measure.take-what', { what: title }) })
    if (refused) toast({ text: sayIssue(refused, names, system), look: 'danger' })
    else sayDone(say('review.measure.taken', { what: title, value }))
  }
  return (
    <li className={styles.measure}>
      <div className={styles.words}>
        <strong>{item}</strong>
        <span>{what}</span>
        <span className={styles.quiet}>{range}; {say('review.measure.spread', { share: formatShare(measure.spreadShare) })}</span>
      </div>
      <div className={styles.figure}>
        <span className={styles.big}>{value}</span>
        <span className={styles.quiet}>
          {stored.value === undefined ? say('review.measure.nothing') : say('review.measure.stored', { value: formatMeasured(stored.value, unit, system) })}
          {stored.value !== undefined && stored.evidence && <EvidenceChip mark={stored.evidence.mark} title={stored.evidence.source} />}
        </span>
      </div>
      <div className={styles.actions}>
        {isTaken ? <span>{say('review.measure.is-taken')}</span> : (
          <>
            <Button size="s" icon="check" label={say('review.measure.take')} aria-label={say('kit.act-on', { act: say('review.measure.take'), name: title })} onClick={take} />
            <Button size="s" look="quiet" label={say('review.measure.leave')} aria-label={say('kit.act-on', { act: say('review.measure.leave'), name: title })} onClick={onLeave} />
          </>
        )}
      </div>
    </li>
  )
}

/** As a taken figure names the log it is from: by this it is known as taken. */
const sourceIn = ({ name }: FieldLog, { count }: Measure): string => say('review.measure.source', { log: name, count })

const MOST_LETTERS = 120

/** Who kept the log, as it will stand with the numbers. */
function whoLogged(events: readonly SiteEvent[]): string | undefined {
  const names = [...new Set(events.flatMap(({ by }) => (by ? [by] : [])))].sort().join(', ')
  return names === '' ? undefined : names.length <= MOST_LETTERS ? names : `${names.slice(0, MOST_LETTERS - 1)}…`
}
