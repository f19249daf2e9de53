import { say } from '../_text'
import styles from './wordmark.module.css'

/** The product's name, after a race that narrows at its gate. */
export function Wordmark() {
  return (
    <span className={styles.wordmark}>
      <svg width={26} height={18} viewBox="0 0 26 18" aria-hidden="true">
        <path d="M0 1C6.5 1 7.5 6 13 6s7-2.5 13-2.5v11c-6 0-7.5-2.5-13-2.5S6.5 17 0 17z" fill="var(--water)" />
        <path d="M13 0.5v4M13 13.5v4" stroke="var(--ink)" strokeWidth={2.5} strokeLinecap="round" />
      </svg>
      <span>{say('shell.name')}</span>
    </span>
  )
}
