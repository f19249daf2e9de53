'use client'

import { usePrintDay } from '../_frame/use-print-day'
import { say } from '../_text'
import styles from './planner.module.css'

/**
 * What a print of the page needs beside what the screen shows: the day, what it may be used for, and where the sheets with the map are.
 *
 * @param isPending figures are still being worked out: a sheet that lacks them says so
 */
export function PrintHead({ isPending }: { isPending: boolean }) {
  const day = usePrintDay()
  return (
    <div className={styles.printHead}>
      {isPending && <p className={styles.notDone}>{say('plan.printed-early')}</p>}
      <p>{day !== undefined && say('shell.printed-on', { day })} {say('plan.from-book')}</p>
      <p>{say('caution.planning-aid')}</p>
    </div>
  )
}
