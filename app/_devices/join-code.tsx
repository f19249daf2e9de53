'use client'

import { useState } from 'react'
import { say } from '../_text'
import '../_text/areas/devices'
import { Icon } from '../_look/icon'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { Segments } from '../_ui/segments'
import { ask } from './ask'
import styles from './devices.module.css'
import { ShownCode, type MadeCode } from './shown-code'

const kinds = ['district', 'read-district'] as const
const uses = ['1', '5', '20'] as const
const days = ['1', '30', '365'] as const

/** Makes a code that opens one district, and shows it to be typed or scanned. */
export function JoinCode({ base, districts }: { base: string; districts: readonly { id: string; name: string }[] }) {
  const [districtId, setDistrict] = useState(districts[0]?.id)
  const [kind, setKind] = useState<(typeof kinds)[number]>('read-district')
  const [count, setCount] = useState<(typeof uses)[number]>('1')
  const [lasting, setLasting] = useState<(typeof days)[number]>('30')
  const [made, setMade] = useState<MadeCode>()
  const [line, setLine] = useState<{ text: string; isFailure: boolean }>()

  const make = async () => {
    const asked = await ask<MadeCode>('/api/devices/codes', 'POST', { scope: { kind, districtId }, uses: Number(count), grantDays: Number(lasting) })
    setMade('value' in asked ? asked.value : undefined)
    setLine('sentence' in asked ? { text: asked.sentence, isFailure: true } : undefined)
  }
  const end = async () => {
    const asked = await ask('/api/devices/codes', 'DELETE')
    if ('value' in asked) setMade(undefined)
    setLine('sentence' in asked ? { text: asked.sentence, isFailure: true } : { text: say('devices.ended'), isFailure: false })
  }
  return (
    <section className={styles.part} aria-labelledby="join">
      <h2 id="join" className={styles.heading}>{say('devices.join')}</h2>
      {districts.length === 0
        ? <p>{say('devices.no-district')}</p>
        : (
          <div className={styles.fields}>
            <ChoiceField label={say('devices.district')} choices={districts.map(({ id, name }) => ({ value: id, label: name }))} value={districtId} onCommit={setDistrict} />
            <Segments label={say('devices.right')} choices={kinds.map((value) => ({ value, label: say(`devices.scope.${value}`) }))} value={kind} onCommit={setKind} />
            <Segments label={say('devices.uses')} choices={uses.map((value) => ({ value, label: say(`devices.uses.${value}`) }))} value={count} onCommit={setCount} />
            <Segments label={say('devices.days')} choices={days.map((value) => ({ value, label: say(`devices.days.${value}`) }))} value={lasting} onCommit={setLasting} />
            <div className={styles.row}>
              <Button look="primary" label={say('devices.make-code')} disabled={districtId === undefined} onClick={() => { void make() }} />
              <Button look="quiet" label={say('devices.end-codes')} onClick={() => { void end() }} />
            </div>
          </div>
        )}
      <div className={styles.wide} role="status">
        {made && <ShownCode base={base} made={made} />}
        {line && (line.isFailure ? <p className={styles.failed}><Icon name="warn" /> <span>{line.text}</span></p> : <p>{line.text}</p>)}
      </div>
    </section>
  )
}
