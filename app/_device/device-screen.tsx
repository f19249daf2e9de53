'use client'

import { useSyncExternalStore } from 'react'
import { Shell } from '../_frame/shell'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { EmptyState } from '../_ui/empty-state'
import { ProgressBar } from '../_ui/progress-bar'
import { lookForUpdate } from '../_shell/offline-shell'
import { useOfflineShell } from '../_shell/use-offline-shell'
import styles from './device.module.css'
import { formatBytes } from './format-bytes'
import { KeptDistricts } from './kept-districts'
import { ToSettle } from './to-settle'
import { useDeviceStore } from './use-device-store'

const noChange = () => () => undefined

/** What this device keeps of the station, and how far it would go without it. */
export function DeviceScreen() {
  const shell = useOfflineShell()
  const { kept, unsettledIds, room, error, working, keep, drop, askToLast } = useDeviceStore()
  const address = useSyncExternalStore(noChange, () => location.host, () => '')
  return (
    <Shell>
      <div className={styles.page}>
        <h1 className={styles.title}>{say('device.title')}</h1>
        <section className={styles.part} aria-labelledby="device-shell">
          <h2 id="device-shell" className={styles.heading}>{say('device.shell')}</h2>
          <p className={styles.state} data-state={shell} role="status">{say(`device.shell.${shell}`, { address })}</p>
          {(shell === 'ready' || shell === 'update') && <Button size="s" label={say('device.update.look')} onClick={() => { void lookForUpdate() }} />}
        </section>
        <ToSettle docIds={unsettledIds} />
        <section className={styles.part} aria-labelledby="device-kept">
          <h2 id="device-kept" className={styles.heading}>{say('device.kept')}</h2>
          {error && <p className={styles.error} role="alert">{error}</p>}
          {working && <ProgressBar label={say('device.keeping', { district: working.name })} share={working.share} />}
          {kept === undefined
            ? <p role="status">{say('device.loading')}</p>
            : kept.length === 0
              ? <EmptyState title={say('device.none')} text={say('device.none.text')} />
              : <KeptDistricts districts={kept} canKeep={shell === 'ready' || shell === 'update'} isBusy={working !== undefined} onKeep={keep} onDrop={drop} />}
        </section>
        <section className={styles.part} aria-labelledby="device-room">
          <h2 id="device-room" className={styles.heading}>{say('device.room')}</h2>
          {room?.used !== undefined && room.most !== undefined && <p>{say('device.room.used', { used: formatBytes(room.used), most: formatBytes(room.most) })}</p>}
          <p>{say(room?.isLasting === undefined ? 'device.room.unknown' : room.isLasting ? 'device.room.lasting' : 'device.room.passing')}</p>
          {room?.isLasting === false && <Button size="s" label={say('device.room.ask')} onClick={() => { void askToLast() }} />}
        </section>
      </div>
    </Shell>
  )
}
