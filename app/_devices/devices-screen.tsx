'use client'

import { useEffect, useState } from 'react'
import { Shell } from '../_frame/shell'
import { listWords, say } from '../_text'
import '../_text/areas/exercise'
import '../_text/areas/devices'
import { Icon } from '../_look/icon'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { ButtonLink } from '../_ui/button-link'
import { useAddress } from '../_ui/use-address'
import { ask } from './ask'
import { DeviceList } from './device-list'
import type { Devices } from './devices'
import { backFrom } from './devices-href'
import styles from './devices.module.css'
import { joinBase, joinHosts } from './join-base'
import { JoinCode } from './join-code'
import { QrCode } from './qr-code'

const LOOK_AGAIN_ms = 10_000
/** Four pairs at a time, so that a line never ends inside one. */
const inFours = (fingerprint: string): string[] => fingerprint.match(/.{1,12}/g) ?? []

/** Whether, how and to which devices the station serves a district over the network. */
export function DevicesScreen({ first }: { first: Devices }) {
  const [devices, setDevices] = useState(first)
  const [failure, setFailure] = useState<string>()
  const [isTurning, setTurning] = useState(false)
  const [chosen, choose] = useState<string>()
  const back = backFrom(useAddress('back').back)
  const { network, hosted } = devices

  const look = async () => {
    const asked = await ask<Devices>('/api/devices', 'GET')
    if ('value' in asked) setDevices(asked.value)
  }
  useEffect(() => {
    const timer = setInterval(() => void look(), LOOK_AGAIN_ms)
    return () => { clearInterval(timer) }
  }, [])
  const turn = async (isOn: boolean) => {
    setTurning(true)
    const asked = await ask<Devices>('/api/devices', 'PUT', { isOn })
    setTurning(false)
    setFailure('sentence' in asked ? asked.sentence : undefined)
    if ('value' in asked) setDevices(asked.value)
  }

  const isServed = network?.isOn === true && network.port !== undefined && !network.trouble
  const hosts = joinHosts(devices)
  const { host, guide, base } = joinBase(devices, chosen)

  return (
    <Shell>
      <div className={styles.page}>
        <header className={styles.head}>
          {back !== undefined && <div><ButtonLink size="s" icon="arrowLeft" href={back} label={say('exercise.back')} /></div>}
          <h1 className={styles.title}>{say('devices.title')}</h1>
          <p className={styles.quiet}>{say('devices.lead')}</p>
        </header>
        <section className={styles.part} aria-labelledby="network">
          <h2 id="network" className={styles.heading}>{say('devices.network')}</h2>
          {hosted[0] && <p>{say('devices.hosted', { address: `https://${hosted[0]}` })}</p>}
          {!network && <p>{say('devices.none')}</p>}
          {network && (
            <div className={styles.row}>
              <p role="status">{isTurning ? say('devices.turning') : say(isServed ? 'devices.on' : 'devices.off')}</p>
              <Button look={network.isOn ? 'plain' : 'primary'} label={say(network.isOn ? 'devices.turn-off' : 'devices.turn-on')} disabled={isTurning} onClick={() => { void turn(!network.isOn) }} />
            </div>
          )}
          {network?.trouble && <p className={styles.failed} role="alert"><Icon name="warn" /> <span>{network.trouble.code === 'port-taken' ? say('devices.trouble.port-taken', { port: String(network.trouble.port) }) : say('devices.trouble.other', { reason: network.trouble.reason })}</span></p>}
          {failure && <p className={styles.failed} role="alert"><Icon name="warn" /> <span>{failure}</span></p>}
          {isServed && network.addresses.length === 0 && <p className={styles.quiet}>{say('devices.no-address')}</p>}
          {isServed && network.notCovered.length > 0 && <p className={styles.quiet}>{say('devices.not-covered', { hosts: listWords(network.notCovered) })}</p>}
          {isServed && hosts.length > 1 && (
            <ChoiceField label={say('devices.address')} choices={hosts.map((value) => ({ value, label: value }))} value={host} onCommit={choose} />
          )}
        </section>
        {guide && network?.fingerprint && (
          <section className={styles.part} aria-labelledby="trust">
            <h2 id="trust" className={styles.heading}>{say('devices.trust')}</h2>
            <p>{say('devices.trust.text')}</p>
            <div className={styles.code}>
              <QrCode text={guide} label={say('devices.trust.qr')} />
              <div className={styles.beside}>
                <p className={styles.address}>{guide}</p>
                <h3 className={styles.small}>{say('devices.fingerprint')}</h3>
                <p className={styles.fingerprint}>{inFours(network.fingerprint).map((four) => <span key={four}>{four}</span>)}</p>
                <p className={styles.quiet}>{say('devices.fingerprint.text')}</p>
              </div>
            </div>
          </section>
        )}
        {base && <JoinCode base={base} districts={devices.districts} />}
        <DeviceList grants={devices.grants} districts={devices.districts} exercises={devices.exercises} onChange={() => void look()} />
      </div>
    </Shell>
  )
}
