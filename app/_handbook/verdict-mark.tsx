import type { Verdict } from '@/lib/supply'
import { Icon, type IconName } from '../_look/icon'
import { say } from '../_text'
import '../_text/areas/handbook'
import styles from './handbook.module.css'

const icons: Readonly<Record<Verdict, IconName>> = { pass: 'check', fail: 'close', unknown: 'note' }

/** Pass, fail or not known: a sign and the word, the colour only beside them. */
export function VerdictMark({ verdict }: { verdict: Verdict }) {
  return <span className={styles.verdict} data-verdict={verdict}><Icon name={icons[verdict]} size={14} />{say(`handbook.verdict.${verdict}`)}</span>
}
