'use client'

import { useEffect, useState } from 'react'
import { getClient, useSaveState, startEventDesk } from '../_client'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { startOfflineShell, takeUpdate } from './offline-shell'
import styles from './update-notice.module.css'
import { useOfflineShell } from './use-offline-shell'

/** Puts the app on the device, and offers a newer version when one waits; nobody is made to take it in the middle of something. */
export function UpdateNotice() {
  const state = useOfflineShell()
  const { unkeptCount } = useSaveState()
  const [isLater, setLater] = useState(false)
  useEffect(() => { void startOfflineShell(); void startEventDesk() }, [])
  if (state !== 'update' || isLater) return null
  return (
    <div className={styles.notice} role="status">
      <span className={styles.words}>{say(unkeptCount > 0 ? 'device.update.unkept' : 'device.update.text')}</span>
      <Button size="s" label={say('device.update.take')} disabled={unkeptCount > 0} onClick={() => { void getClient().flush().finally(takeUpdate) }} />
      <Button size="s" look="quiet" label={say('device.update.later')} onClick={() => { setLater(true) }} />
    </div>
  )
}
