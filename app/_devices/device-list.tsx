'use client'

import { say } from '../_text'
import '../_text/areas/exercise'
import '../_text/areas/devices'
import { Button } from '../_ui/button'
import type { Grant } from './devices'
import styles from './devices.module.css'
import { useFormatDay } from './use-format-day'
import { useRevoke } from './use-revoke'

type Named = { readonly id: string; readonly name: string }
type Props = { grants: readonly Grant[]; districts: readonly Named[]; exercises: readonly Named[]; onChange: () => void }

const nameIn = (list: readonly Named[], wanted: string): string | undefined => list.find(({ id }) => id === wanted)?.name

/** Who has joined, and what it may. */
function lineOf({ name, scope }: Grant, districts: readonly Named[], exercises: readonly Named[]): string {
  if (scope.kind === 'seat') return say('devices.device.seat', { name, seat: say(`exercise.seat.${scope.role}`), exercise: nameIn(exercises, scope.exerciseId) ?? say('devices.device.unknown-exercise') })
  return say('devices.device', { name, right: say(`devices.scope.${scope.kind}`), district: nameIn(districts, scope.districtId) ?? say('devices.device.unknown-district') })
}

/** Devices that have joined, what each may do, and the way to put it out. */
export function DeviceList({ grants, districts, exercises, onChange }: Props) {
  const formatDay = useFormatDay()
  const revoke = useRevoke(onChange)
  return (
    <section className={styles.part} aria-labelledby="devices">
      <h2 id="devices" className={styles.heading}>{say('devices.devices')}</h2>
      {grants.length === 0
        ? <p className={styles.quiet}>{say('devices.no-devices')}</p>
        : (
          <ul className={styles.list}>
            {grants.map((grant) => (
              <li key={grant.id} className={styles.device}>
                <div className={styles.beside}>
                  <p>{lineOf(grant, districts, exercises)}</p>
                  <p className={styles.quiet}>{say('devices.device.times', { seen: formatDay(grant.lastSeenAt), until: formatDay(grant.expiresAt) })}</p>
                </div>
                <Button look="danger" size="s" label={say('devices.revoke')} aria-label={say('devices.revoke-of', { name: grant.name })} onClick={() => { void revoke(grant.id, grant.name) }} />
              </li>
            ))}
          </ul>
        )}
    </section>
  )
}
