'use client'

import { useState, type ReactNode } from 'react'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import styles from './answer-sentence.module.css'
import { joinClasses } from './join-classes'

export type AnswerSentenceProps = {
  /** What must come before everything: no water, short of the need, why there is no answer. */
  alerts?: readonly { readonly look: 'amber' | 'danger'; readonly text: string }[]
  /** The answer, lowest figure first. */
  children: ReactNode
  /** The first thing to change and the first thing to measure. */
  change?: ReactNode
  measure?: ReactNode
  /** A better figure is being worked out; says so in words. */
  pending?: string | undefined
}

/** As many as leave room for the answer and what it is about; the others are a press away. */
const ALERTS_SHOWN = 3

/** The answer as a sentence, always in sight. Read out when it changes. */
export function AnswerSentence({ alerts = [], children, change, measure, pending }: AnswerSentenceProps) {
  const [isOpen, setOpen] = useState(false)
  const others = alerts.slice(ALERTS_SHOWN)
  return (
    <div className={styles.answer} aria-live="polite" aria-busy={pending !== undefined}>
      {alerts.length > 0 && (
        <div className={styles.alerts}>
          {alerts.slice(0, ALERTS_SHOWN).map((one) => <Alert key={one.text} {...one} />)}
          {others.length > 0 && <button type="button" className={styles.more} aria-expanded={isOpen} onClick={() => { setOpen(!isOpen) }}>{say('result.more-alerts', { count: others.length })}</button>}
          {others.map((one) => <div key={one.text} className={styles.other} data-open={isOpen}><Alert {...one} /></div>)}
        </div>
      )}
      <p className={styles.sentence}>
        {children}
        {pending && <span className={joinClasses(styles.pending, children !== '' && styles.beside)}> {pending}</span>}
      </p>
      {(change || measure) && (
        <ul className={styles.steps}>
          {change && <li>{change}</li>}
          {measure && <li>{measure}</li>}
        </ul>
      )}
    </div>
  )
}

function Alert({ look, text }: { look: 'amber' | 'danger'; text: string }) {
  return <p className={joinClasses(styles.alert, styles[look])}><span className={styles.sign}><Icon name={look === 'danger' ? 'block' : 'warn'} size={18} /></span><span>{text}</span></p>
}
