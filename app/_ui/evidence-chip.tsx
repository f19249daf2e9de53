import type { EvidenceMark } from '@/lib/evidence'
import { plainSource, say } from '../_text'
import styles from './evidence-chip.module.css'

/** Solid is known here, hollow comes from elsewhere, dashed is a guess. */
export function MarkShape({ mark }: { mark: EvidenceMark }) {
  const isSolid = mark === 'measured' || mark === 'computed'
  return (
    <svg width={16} height={16} viewBox="0 0 16 16" aria-hidden="true" className={styles.shape}>
      {mark === 'measured' && <rect x={1} y={1} width={14} height={14} rx={1.5} fill="currentColor" />}
      {mark === 'computed' && <circle cx={8} cy={8} r={7.2} fill="currentColor" />}
      {mark === 'handbook' && <rect x={1.7} y={1.7} width={12.6} height={12.6} rx={1.5} fill="none" stroke="currentColor" strokeWidth={1.4} />}
      {mark === 'assumed' && <circle cx={8} cy={8} r={6.5} fill="none" stroke="currentColor" strokeWidth={1.4} strokeDasharray="2.6 2.5" />}
      <text x={8} y={8} dy="0.36em" textAnchor="middle" fontSize={10} fontWeight={700} fill={isSolid ? 'var(--sheet)' : 'currentColor'}>{say(`evidence.${mark}.letter`)}</text>
    </svg>
  )
}

/** `isLive`: read out when it changes. */
export type EvidenceChipProps = { mark: EvidenceMark; title?: string | undefined; isLive?: boolean }

/** How a figure is known: a shape, a letter and the word. */
export function EvidenceChip({ mark, title, isLive = false }: EvidenceChipProps) {
  return (
    <span className={styles.chip} {...(isLive && { role: 'status' })} title={title ? plainSource(title) : say(`evidence.${mark}.means`)}>
      <MarkShape mark={mark} />
      <span>{say(`evidence.${mark}`)}</span>
    </span>
  )
}
