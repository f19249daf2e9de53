'use client'

import shared from '../_look/shared.module.css'
import { say } from '../_text'
import { usePrintDay } from './use-print-day'

/** The day of a print, on paper alone. */
export function PrintedOn() {
  const day = usePrintDay()
  return <p className={shared.paperOnly}>{day !== undefined && say('shell.printed-on', { day })}</p>
}
