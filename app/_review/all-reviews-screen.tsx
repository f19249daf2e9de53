'use client'

import { useDistrict } from '../_client'
import { Shell } from '../_frame/shell'
import { logHref } from '../_links/log-href'
import { reviewHref } from '../_links/review-href'
import { formatDay, formatGiven, say } from '../_text'
import '../_text/areas/log'
import '../_text/areas/review'
import { ButtonLink } from '../_ui/button-link'
import { Caution } from '../_ui/caution'
import { DocumentList, DocumentRow } from '../_ui/document-list'
import { EmptyState } from '../_ui/empty-state'
import { ProgressBar } from '../_ui/progress-bar'
import { useUnitSystem } from '../_ui/unit-system-context'
import { CalibrationPart } from './calibration-part'
import { HistoryPart } from './history-part'
import styles from './review.module.css'
import { useAllReviews } from './use-all-reviews'

/** What all logs of a district say: each with its flow, whether promises held, and what was measured of whom. */
export function AllReviewsScreen({ districtId }: { districtId: string }) {
  const district = useDistrict(districtId).doc
  const { status, doneShare, reviewed, failedCount } = useAllReviews(districtId)
  const [system] = useUnitSystem()
  return (
    <Shell {...(district && { district: { id: districtId, name: district.name } })} screen="log">
      <div className={styles.page}>
        <header>
          <h1 className={styles.title}>{say('review.all')}</h1>
          <p className={styles.quiet}>{say('review.all.text')}</p>
        </header>
        {status === 'loading' && <ProgressBar label={say('review.working')} share={doneShare} />}
        {status === 'unreachable' && <p role="alert">{say('review.status.unreachable')}</p>}
        {failedCount > 0 && <p role="alert">{say('review.all.failed', { count: failedCount })}</p>}
        {status === 'ready' && reviewed.length === 0 && failedCount === 0 && <EmptyState title={say('review.all.none')} text={say('review.all.none.text')}><ButtonLink href={logHref(districtId)} label={say('log.title')} iconAfter="arrowRight" /></EmptyState>}
        {reviewed.length > 0 && (
          <DocumentList>
            {reviewed.map(({ log, review }) => (
              <DocumentRow
                key={log.id} href={reviewHref(districtId, log.id)} name={log.name}
                facts={[say('review.all.row', { date: formatDay(log.date), achieved: formatGiven(review.achieved_gpm, system), hasLoads: review.achieved_gpm === undefined ? 'no' : 'yes', planned: formatGiven(review.planned_gpm, system), hasPlan: review.planned_gpm === undefined ? 'no' : 'yes' })]}
              />
            ))}
          </DocumentList>
        )}
        {status === 'ready' && reviewed.length > 0 && <CalibrationPart reviewed={reviewed} />}
        {status === 'ready' && reviewed.length > 0 && <HistoryPart reviewed={reviewed} district={district} />}
        <Caution title={say('caution.title')} kinds={['planning-aid']} />
      </div>
    </Shell>
  )
}
