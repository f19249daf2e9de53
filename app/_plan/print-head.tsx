'use client'

import { useEffect, useState } from 'react'
import { formatToday, say } from '../_text'
import styles from './planner.module.css'

/**
 * What a print of the page needs beside what the screen shows: the day, what it may be used for, and where the sheets with the map are.
 *
 * @param isPending figures are still being worked out: a sheet that lacks them says so
 */
export function PrintHead({ isPending }: { isPending: boolean }) {
  const [day, setDay] = useState(formatToday)
  // A page may stand open for days before it is printed.
  useEffect(() => {
    const onPrint = () => { setDay(formatToday()) }
    window.addEventListener('beforeprint', onPrint)
    return () => { window.removeEventListener('beforeprint', onPrint) }
  }, [])
  return (
    <div className={styles.printHead}>
      {isPending && <p className={styles.notDone}>{say('plan.printed-early')}</p>}
      <p>{say('plan.printed-on', { day })} {say('plan.from-book')}</p>
      <p>{say('caution.planning-aid')}</p>
    </div>
  )
}
