import { say } from '../_text'
import '../_text/areas/survey'
import { Button } from '../_ui/button'
import { EvidenceChip } from '../_ui/evidence-chip'
import styles from './survey.module.css'

/** A figure worked out from the fields above it, with how, and the way to take it over. */
export function ComputedRow({ label, value, how, onUse }: { label: string; value: string; how: string; onUse?: () => void }) {
  return (
    <div className={styles.computed}>
      <p className={styles.computedFigure}><span>{label}</span> <strong>{value}</strong> <EvidenceChip mark="computed" /></p>
      <p className={styles.how}>{how}</p>
      {onUse && <Button size="s" label={say('survey.use-figure')} onClick={onUse} />}
    </div>
  )
}
