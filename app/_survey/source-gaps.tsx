import type { Source } from '@/lib/plan'
import { sourceGaps } from '@/lib/supply'
import { say } from '../_text'
import '../_text/areas/draft'
import styles from './source-gaps.module.css'

/** What is still to be found out of a source, and what is counted until then. */
export function SourceGaps({ source }: { source: Source }) {
  const gaps = sourceGaps(source)
  if (gaps.length === 0) return null
  return (
    <div className={styles.alert} role="group" aria-label={say('draft.gaps')}>
      <p className={styles.title}>{say('draft.gaps')}</p>
      <ul className={styles.gaps}>{gaps.map((gap) => <li key={gap}>{say(`draft.gap.${gap}`)}</li>)}</ul>
    </div>
  )
}
