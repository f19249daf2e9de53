import { say } from '../_text'
import styles from './being-worked-out.module.css'

/** Stands, on screen and on paper, where a figure of the answer will be. */
export const BeingWorkedOut = () => <p className={styles.line} aria-busy="true">{say('plan.working')}</p>

const PARTS = 5

/** The supply strip before there is one: as high as it will be, so that nothing moves when it comes. */
export function StripSkeleton() {
  return (
    <div className={styles.strip} aria-busy="true">
      <p className={styles.line}>{say('plan.working')}</p>
      <div className={styles.parts} aria-hidden="true">{Array.from({ length: PARTS }, (_, part) => <span key={part} className={styles.bone} />)}</div>
    </div>
  )
}
