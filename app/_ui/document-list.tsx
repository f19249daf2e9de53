import type { ReactNode } from 'react'
import { ButtonLink } from './button-link'
import styles from './document-list.module.css'

/** Plans, exercises, logs or reviews, one under the other; its children are `DocumentRow`s. */
export const DocumentList = ({ children }: { children: ReactNode }) => <ul className={styles.list}>{children}</ul>

type Props = {
  href: string
  name: string
  /** The one figure it is looked for by. */
  figure?: string | undefined
  /** What is to be said of it, in a few words each; what is absent is left out. */
  facts: readonly (string | false | undefined)[]
  /** A box to tick it by. */
  pick?: ReactNode
  /** What can be done with it. */
  children?: ReactNode
}

/** One of them: the whole name leads to it; on a narrow screen what is said of it stands under the name. */
export const DocumentRow = ({ href, name, figure, facts, pick, children }: Props) => (
  <li className={styles.row}>
    {pick && <div className={styles.pick}>{pick}</div>}
    <ButtonLink className={styles.name} look="quiet" href={href} label={name} iconAfter="arrowRight" />
    <p className={styles.facts}>{figure !== undefined && <strong className={styles.figure}>{figure}</strong>}{facts.map((fact) => fact && <span key={fact}>{fact}</span>)}</p>
    {children && <div className={styles.acts}>{children}</div>}
  </li>
)
