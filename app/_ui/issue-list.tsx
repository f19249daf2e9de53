'use client'

import type { Issue, Severity } from '@/lib/issue'
import { Icon, type IconName } from '../_look/icon'
import { issueLabel, issueLines, issueLook, say } from '../_text'
import type { IssueLook, NameOf } from '../_text'
import { Button } from './button'
import styles from './issue-list.module.css'
import { joinClasses } from './join-classes'
import { useUnitSystem } from './unit-system-context'

const order: readonly Severity[] = ['block', 'warn', 'note']
const icons: Readonly<Record<IssueLook, IconName>> = { block: 'block', loss: 'block', unfinished: 'edit', warn: 'warn', note: 'note' }

export type IssueListProps = {
  issues: readonly Issue[]
  names: NameOf
  /** Goes to the item an issue is about. */
  onGo?: (subjectId: string) => void
  label?: string
}

/** What needs a look, by severity and else in the order given, none twice: each with its shape and its word. */
export function IssueList({ issues, names, onGo, label }: IssueListProps) {
  const [system] = useUnitSystem()
  const sorted = issueLines(issues, names, system).sort((a, b) => order.indexOf(a.one.severity) - order.indexOf(b.one.severity))
  if (sorted.length === 0) return <p className={styles.none}>{say('kit.issues.none')}</p>
  return (
    <ul className={styles.list} aria-label={label}>
      {sorted.map(({ one, text }, index) => {
        const [subject] = one.subjectIds
        const name = subject === undefined ? undefined : names(subject)
        return (
          <li key={`${one.code} ${one.subjectIds.join(' ')} ${index}`} className={joinClasses(styles.issue, styles[issueLook(one)])}>
            <span className={styles.sign}><Icon name={icons[issueLook(one)]} size={18} /></span>
            <span className={styles.words}><span className={styles.severity}>{issueLabel(one)}</span> {text}</span>
            {onGo && subject !== undefined && name !== undefined && (
              <Button look="quiet" size="s" iconAfter="arrowRight" label={say('kit.go-to', { name })} onClick={() => { onGo(subject) }} />
            )}
          </li>
        )
      })}
    </ul>
  )
}
