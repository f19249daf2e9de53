'use client'

import { say } from '../_text'
import { EvidenceChip } from './evidence-chip'
import styles from './evidence-mark.module.css'
import type { EvidenceMarkProps } from './evidence-panel'
import { usePart } from './use-part'

const loadPanel = () => import('./evidence-panel').then(({ EvidencePanel }) => EvidencePanel)

/** The mark of a figure as a button; it opens the four ways of knowing, by whom, when and from what. */
export function EvidenceMark(props: EvidenceMarkProps) {
  const { field, evidence, isDisabled = false } = props
  const [Panel, ask] = usePart<EvidenceMarkProps>(loadPanel)
  if (Panel) return <Panel {...props} />
  const mark = evidence?.mark ?? 'assumed'
  return (
    <button type="button" className={styles.trigger} disabled={isDisabled} aria-haspopup="dialog" aria-expanded={false} aria-label={say('evidence.how-known-field', { field, mark: say(`evidence.${mark}`) })} onClick={ask}>
      <EvidenceChip mark={mark} />
    </button>
  )
}
