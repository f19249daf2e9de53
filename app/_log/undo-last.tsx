'use client'

import { useMemo } from 'react'
import type { SiteEvent } from '@/lib/plan'
import { logDevice } from '../_client'
import { say, type UnitSystem } from '../_text'
import '../_text/areas/log'
import { Button } from '../_ui/button'
import { eventWords } from './event-words'
import { clockTime } from './clock-time'
import styles from './log.module.css'
import { takeBack } from './take-back'
import { postKey, type LogDesk } from './use-log'

/** Takes back the last thing noted on this device at this post. */
export function UndoLast({ desk, post, system }: { desk: LogDesk; post: SiteEvent['post']; system: UnitSystem }) {
  const { events } = desk.read.effective
  const last = useMemo(
    () => events.filter((event) => event.device === logDevice() && event.entered === 'button' && postKey(event.post) === postKey(post)).toSorted((a, b) => (a.made_ms ?? a.at_ms) - (b.made_ms ?? b.at_ms)).at(-1),
    [events, post],
  )
  if (!last) return null
  const what = `${eventWords(last, desk.names, system)}, ${clockTime(last.at_ms, desk.log?.zone)}`
  return <div className={styles.undoBar}><Button className={styles.undo} icon="undo" label={say('log.undo', { what })} onClick={() => { void takeBack(desk, [last]) }} /></div>
}
