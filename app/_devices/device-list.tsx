'use client'

import { useState } from 'react'
import type { Grant } from '../_server/devices/grants'
import { formatDay, say } from '../_text'
import { Button } from '../_ui/button'
import { ask } from './ask'
import styles from './devices.module.css'

type Props = { grants: readonly Grant[]; districts: readonly { id: string; name: string }[]; onChange: () => void }

/** Devices that have joined, what each may do, and the way to put it out. */
export function DeviceList({ grants, districts, onChange }: Props) {
  const [line, setLine] = useState<string>()
  const revoke = async (id: string, name: string) => {
    const asked = await ask(`/api/devices/grants/${encodeURIComponent(id)}`, 'DELETE')
    setLine('sentence' in asked ? asked.sentence : say('devices.revoked', { name }))
    onChange()
  }
  return (
    <section className={styles.part} aria-labelledby="devices">
      <h2 id="devices" className={styles.heading}>{say('devices.devices')}</h2>
      {grants.length === 0
        ? <p className={styles.quiet}>{say('devices.no-devices')}</p>
        : (
          <ul className={styles.list}>
            {grants.map(({ id, name, scope, lastSeenAt, expiresAt }) => (
              <li key={id} className={styles.device}>
                <div className={styles.beside}>
                  <p>{say('devices.device', { name, right: say(`devices.scope.${scope.kind}`), district: districts.find((one) => one.id === scope.districtId)?.name ?? say('devices.device.unknown-district') })}</p>
                  <p className={styles.quiet}>{say('devices.device.times', { seen: formatDay(lastSeenAt), until: formatDay(expiresAt) })}</p>
                </div>
                <Button look="danger" size="s" label={say('devices.revoke')} aria-label={say('devices.revoke-of', { name })} onClick={() => { void revoke(id, name) }} />
              </li>
            ))}
          </ul>
        )}
      <p role="status">{line}</p>
    </section>
  )
}
