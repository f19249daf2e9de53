'use client'

import { useEffect, useState } from 'react'
import { formatToday } from '../_text'

/** The day of a print: figures change, and a sheet on a wall must say of when it is. Undefined while the page is made on the server, which does not know the reader's day. */
export function usePrintDay(): string | undefined {
  const [day, setDay] = useState<string>()
  // A page may stand open for days before it is printed.
  useEffect(() => {
    const onPrint = () => { setDay(formatToday()) }
    queueMicrotask(onPrint)
    window.addEventListener('beforeprint', onPrint)
    return () => { window.removeEventListener('beforeprint', onPrint) }
  }, [])
  return day
}
