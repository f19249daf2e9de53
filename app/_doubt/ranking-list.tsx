'use client'

import Link from 'next/link'
import { useId } from 'react'
import { toldInputs, type Ranking } from '@/lib/doubt'
import { formatShare, measureWords, rangeWords, say } from '../_text'
import { EvidenceChip } from '../_ui/evidence-chip'
import { useUnitSystem } from '../_ui/unit-system-context'
import { usePlanBoard } from '../_plan/plan-context'
import styles from './doubt.module.css'
import { inputHref } from './input-words'

const MOST_ROWS = 10

/** What to go and measure, most first: each row opens the place where the number is entered. */
export function RankingList({ title, ranking }: { title: string; ranking: Ranking | undefined }) {
  const { district, plan, names } = usePlanBoard()
  const [system] = useUnitSystem()
  const titleId = useId()
  const rows = toldInputs(ranking).slice(0, MOST_ROWS)
  const restShare = ranking?.restShare ?? 0
  const othersShare = Math.max(0, 1 - restShare - rows.reduce((sum, { share }) => sum + share, 0))
  return (
    <section className={styles.ranking} aria-labelledby={titleId}>
      <h3 id={titleId}>{title}</h3>
      {!ranking && <p className={styles.quiet}>{say('doubt.rank.none')}</p>}
      <ol className={styles.rows}>
        {rows.map(({ input, share, shareError }) => (
          <li key={input.key}>
            <Link href={inputHref(input, district, plan)} className={styles.row}>
              <span className={styles.share}>{formatShare(share)}<span className={styles.error}>{say('doubt.rank.error', { error: formatShare(Math.ceil(100 * shareError) / 100) })}</span></span>
              <span className={styles.words}>
                <span>{measureWords(input, names)}</span>
                <span className={styles.line}><EvidenceChip mark={input.mark} /><span>{rangeWords(input, system)}</span></span>
              </span>
              <span className={styles.bar} aria-hidden="true"><span style={{ width: `${100 * share}%` }} /></span>
            </Link>
          </li>
        ))}
      </ol>
      {ranking && <p className={styles.quiet}>{say('doubt.rank.rest', { rest: formatShare(restShare), others: formatShare(othersShare) })}</p>}
    </section>
  )
}
