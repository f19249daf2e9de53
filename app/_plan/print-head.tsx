'use client'

import { useEffect, useState } from 'react'
import { formatDay, say } from '../_text'
import styles from './planner.module.css'

const today = (): string => formatDay(new Date().toISOString())

/** What a print of the page needs beside what the screen shows: the day, what it may be used for, and where the sheets with the map are. */
export function PrintHead() {
  const [day, setDay] = useState(today)
  // A page may stand open for days before it is printed.
  useEffect(() => {
    const onPrint = () => { setDay(today()) }
    window.addEventListener('beforeprint', onPrint)
    return () => { window.removeEventListener('beforeprint', onPrint) }
  }, [])
  return (
    <div className={styles.printHead}>
      <p>{say('book.foot.printed', { day })} {say('book.from-book')}</p>
      <p>{say('caution.planning-aid')}</p>
    </div>
  )
}
