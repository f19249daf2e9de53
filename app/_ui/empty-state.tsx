import type { ReactNode } from 'react'
import styles from './empty-state.module.css'

/** What stands where nothing is yet: what it will be, and the first step. */
export function EmptyState({ title, text, children }: { title: string; text?: string; children?: ReactNode }) {
  return (
    <div className={styles.empty} data-empty>
      <p className={styles.title}>{title}</p>
      {text && <p className={styles.text}>{text}</p>}
      {children && <div className={styles.actions}>{children}</div>}
    </div>
  )
}
