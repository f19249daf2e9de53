import { Icon } from '../_look/icon'
import { say } from '../_text'
import type { TextKey } from '../_text'
import styles from './caution.module.css'

/** Cautions there are words for: `caution.<kind>`. */
export type CautionKind = Exclude<Extract<TextKey, `caution.${string}`> extends `caution.${infer K}` ? K : never, 'title'>

export type CautionProps = {
  kinds: readonly CautionKind[]
  /** Above the cautions; without it they stand alone. */
  title?: string
}

/** Cautions where they matter, on screen and print. */
export function Caution({ kinds, title }: CautionProps) {
  return (
    <aside className={styles.caution} aria-label={title ?? say('caution.title')}>
      <span className={styles.sign}><Icon name="warn" size={18} /></span>
      <div className={styles.words}>
        {title && <p className={styles.title}>{title}</p>}
        {kinds.map((kind) => <p key={kind}>{say(`caution.${kind}`)}</p>)}
      </div>
    </aside>
  )
}
