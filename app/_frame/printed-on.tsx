'use client'

import { useEffect, useState } from 'react'
import shared from '../_look/shared.module.css'
import { formatToday, say } from '../_text'

/** The day of a print, on paper alone: figures change, and a sheet on a wall must say of when it is. */
export function PrintedOn() {
  const [day, setDay] = useState<string>()
  // A page may stand open for days before it is printed.
  useEffect(() => {
    const onPrint = () => { setDay(formatToday()) }
    queueMicrotask(onPrint)
    window.addEventListener('beforeprint', onPrint)
    return () => { window.removeEventListener('beforeprint', onPrint) }
  }, [])
  return <p className={shared.paperOnly}>{day !== undefined && say('shell.printed-on', { day })}</p>
}
