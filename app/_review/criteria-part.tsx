import type { LogReview, Shown } from '@/lib/review'
import { creditRules } from '@/lib/supply'
import { VerdictMark } from '../_handbook/verdict-mark'
import { formatAsked, formatGiven, formatMinutes, say } from '../_text'
import '../_text/areas/review'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './review.module.css'

/** What the log shows of a steady supply, as a summary that can be printed: each line with what it stands on. */
export function CriteriaPart({ review, logName, date }: { review: LogReview; logName: string; date: string }) {
  const { steady, own } = review
  const [system] = useUnitSystem()
  return (
    <section className={styles.certificate} aria-labelledby="review-criteria">
      <h2 className={styles.heading} id="review-criteria">{say('review.criteria')}</h2>
      <p>{say('review.criteria.of', { log: logName, date })}</p>
      {!steady && !own && <p>{say('review.criteria.none')}</p>}
      {steady && <Line title={say('review.criteria.steady', { flow: formatAsked(creditRules.minimum_gpm, system), within: formatMinutes(creditRules.startWithin_s), span: formatMinutes(creditRules.duration_s) })} shown={steady} />}
      {own && <Line title={say('review.criteria.own')} shown={own} />}
      {review.arrive_s !== undefined && <p className={styles.quiet}>{say('review.criteria.arrival', { time: formatMinutes(review.arrive_s) })}</p>}
      <p className={styles.quiet}>{say('review.criteria.estimate')}</p>
    </section>
  )
}

function Line({ title, shown }: { title: string; shown: Shown }) {
  const [system] = useUnitSystem()
  const { asked, end_s, verdict, basis, fails_s, untested, shownUpTo_s, readingCount, lowest_gpm } = shown
  const flow = formatAsked(asked.flow_gpm, system)
  return (
    <div className={styles.criterion}>
      <p className={styles.line}><VerdictMark verdict={verdict} /><strong>{title}</strong></p>
      <p>{say('review.criteria.asked', { flow, from: formatMinutes(asked.from_s), end: formatMinutes(end_s) })}</p>
      <p className={styles.quiet}>
        {verdict === 'fail' && fails_s !== undefined && say('review.criteria.fails', { time: formatMinutes(fails_s, 'down'), basis })}
        {untested && say('review.criteria.untested', { time: formatMinutes(untested.at_s, 'down'), asked: formatAsked(untested.asked_gpm, system) })}
        {verdict === 'unknown' && !untested && say('review.criteria.unknown', { time: formatMinutes(shownUpTo_s, 'down') })}
        {verdict === 'pass' && say('review.criteria.passes', { basis })}
        {' '}
        {readingCount > 0 && lowest_gpm !== undefined && say('review.criteria.readings', { count: readingCount, lowest: formatGiven(lowest_gpm, system) })}
      </p>
    </div>
  )
}
