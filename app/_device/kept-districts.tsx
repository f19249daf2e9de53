import Link from 'next/link'
import { screenHref } from '../_links/screens'
import { formatDay, say } from '../_text'
import { Button } from '../_ui/button'
import styles from './device.module.css'
import { formatBytes } from './format-bytes'
import type { KeptDistrict } from './kept-state'

type Props = {
  districts: readonly KeptDistrict[]
  canKeep: boolean
  isBusy: boolean
  onKeep: (district: KeptDistrict) => Promise<void>
  onDrop: (district: KeptDistrict) => Promise<void>
}

/** Districts of which this device has something: what, from when, and what waits to be sent. */
export function KeptDistricts({ districts, canKeep, isBusy, onKeep, onDrop }: Props) {
  return (
    <ul className={styles.districts}>
      {districts.map((district) => (
        <li key={district.id} className={styles.district}>
          <h3 className={styles.name}><Link href={screenHref('plan', district.id)}>{district.name}</Link></h3>
          <p>{say(district.isWhole ? 'device.whole' : 'device.part', { plans: district.planCount, exercises: district.exerciseCount, logs: district.logCount, here: district.dataHereCount, data: district.dataCount, size: formatBytes(district.size_bytes) })}</p>
          <p className={styles.quiet}>{say('device.as-of', { day: formatDay(district.keptAt) })}</p>
          {district.waitingCount > 0 && <p className={styles.waiting}>{say('device.waiting', { count: district.waitingCount })}</p>}
          <div className={styles.acts}>
            <Button size="s" label={say('device.keep')} aria-label={say('device.keep.name', { district: district.name })} disabled={isBusy || !canKeep} onClick={() => { void onKeep(district) }} />
            <Button size="s" look="quiet" label={say('device.drop')} aria-label={say('device.drop.name', { district: district.name })} disabled={isBusy || district.waitingCount > 0} onClick={() => { void onDrop(district) }} />
          </div>
        </li>
      ))}
    </ul>
  )
}
