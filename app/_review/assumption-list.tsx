import type { EventsReview, ReviewAssumption } from '@/lib/review'
import { formatClock, formatTime, say, type NameOf } from '../_text'
import '../_text/areas/review'
import { Fold } from '../_ui/fold'
import styles from './review.module.css'

const SHOWN = 12

/** In plain words what the review took for granted: clocks, missing marks, doubles, marks out of order. */
export function AssumptionList({ review, names }: { review: EventsReview; names: NameOf }) {
  const lines = [...review.clocks.flatMap(clockWords), ...review.assumptions.map((one) => assumptionWords(one, names))]
  return (
    <section className={styles.part} aria-labelledby="review-assumed">
      <h2 className={styles.heading} id="review-assumed">{say('review.assumed', { count: lines.length })}</h2>
      {lines.length === 0 ? <p>{say('review.assumed.none')}</p> : <ul className={styles.list}>{lines.slice(0, SHOWN).map((line, k) => <li key={k}>{line}</li>)}</ul>}
      {lines.length > SHOWN && <Fold onPaper="open" title={say('review.assumed.more', { count: lines.length - SHOWN })}><ul className={styles.list}>{lines.slice(SHOWN).map((line, k) => <li key={k}>{line}</li>)}</ul></Fold>}
    </section>
  )
}

function clockWords({ basis, shift_s, doubt_s, eventCount }: EventsReview['clocks'][number]): string[] {
  if (basis === 'reference' || basis === 'agrees') return []
  if (basis === 'unlinked') return [say('review.assumed.clock-unlinked', { count: eventCount })]
  return [say('review.assumed.clock', { count: eventCount, shift: formatTime(Math.abs(shift_s)), way: shift_s > 0 ? 'behind' : 'ahead', doubt: formatTime(doubt_s) })]
}

function assumptionWords({ kind, apparatusId, place, siteId, mark, at_s, basis }: ReviewAssumption, names: NameOf): string {
  return say(`review.assumed.${kind}`, {
    tender: apparatusId === undefined ? say('review.assumed.nobody') : names(apparatusId) ?? apparatusId,
    site: names(siteId ?? place ?? '') ?? say('review.assumed.nowhere'),
    mark: mark ? say(`review.mark.${mark}`) : '',
    time: at_s === undefined ? '' : formatClock(at_s),
    basis: basis ?? 'usual',
  })
}
