'use client'

import { useCallback, useEffect, useState } from 'react'
import { seatRoles, type SeatRole } from '@/lib/exercise'
import type { Exercise } from '@/lib/plan'
import { ask } from '../_devices/ask'
import type { Devices } from '../_devices/devices'
import { devicesHref } from '../_devices/devices-href'
import { joinBase, joinHosts } from '../_devices/join-base'
import { ShownCode, type MadeCode } from '../_devices/shown-code'
import { useRevoke } from '../_devices/use-revoke'
import { exerciseHref } from '../_links/exercise-href'
import { listWords, say } from '../_text'
import '../_text/areas/exercise'
import '../_text/areas/devices'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Card } from '../_ui/card'
import { ChoiceField } from '../_ui/choice-field'
import { Segments } from '../_ui/segments'
import styles from './exercise.module.css'

const counts = ['1', '5', '20'] as const
const DAYS = 1

type Seat = { value: string; label: string; role: SeatRole; siteId?: string }

/** Every seat of an exercise: one for each role, and for each site of the plan it is played on. */
function seatsOf({ bundle: { plan } }: Exercise): Seat[] {
  return seatRoles.flatMap((role): Seat[] => {
    const post = say(`exercise.seat.${role}`)
    const sites = role === 'dumpSite' ? plan.dumpSites : role === 'fillSite' ? plan.fillSites : undefined
    return sites ? sites.map(({ id, name }) => ({ value: `${role} ${id}`, label: say('exercise.seat.post', { post, site: name }), role, siteId: id })) : [{ value: role, label: post, role }]
  })
}

/**
 * Lets other devices in to the seats of an exercise, and shows who sits there.
 *
 * @param present grants whose seat is taken now; each change of it is looked up
 * @param onLeave called when this page is left for another: nobody leads meanwhile
 */
export function SeatsPanel({ exercise, present, onLeave }: { exercise: Exercise; present: readonly string[]; onLeave: () => void }) {
  const [devices, setDevices] = useState<Devices>()
  const [failure, setFailure] = useState<string>()
  const [isTurning, setTurning] = useState(false)
  const [chosen, choose] = useState<string>()
  const [count, setCount] = useState<(typeof counts)[number]>('1')
  const [host, setHost] = useState<string>()
  const [made, setMade] = useState<{ code: MadeCode; seat: string }>()
  const look = useCallback(async () => {
    const asked = await ask<Devices>('/api/devices', 'GET')
    if ('value' in asked) setDevices(asked.value)
    else setFailure(asked.sentence)
  }, [])
  const lookAgain = useCallback(() => { void look() }, [look])
  useEffect(() => { queueMicrotask(() => void look()) }, [look, present])

  const seats = seatsOf(exercise)
  const seat = seats.find(({ value }) => value === chosen) ?? seats[0]
  const hosts = devices ? joinHosts(devices) : []
  const { base, host: shownHost } = devices ? joinBase(devices, host) : {}
  const joined = (devices?.grants ?? []).flatMap(({ id, name, scope }) => (scope.kind === 'seat' && scope.exerciseId === exercise.id ? [{ id, name, label: seats.find(({ value }) => value === (scope.siteId === undefined ? scope.role : `${scope.role} ${scope.siteId}`))?.label ?? say(`exercise.seat.${scope.role}`) }] : []))
  const make = async () => {
    if (!seat) return
    const asked = await ask<MadeCode>('/api/devices/codes', 'POST', { scope: { kind: 'seat', districtId: exercise.districtId, exerciseId: exercise.id, role: seat.role, ...(seat.siteId !== undefined && { siteId: seat.siteId }) }, uses: Number(count), grantDays: DAYS })
    setMade('value' in asked ? { code: asked.value, seat: seat.label } : undefined)
    setFailure('sentence' in asked ? asked.sentence : undefined)
  }
  const turnOn = async () => {
    setTurning(true)
    const asked = await ask<Devices>('/api/devices', 'PUT', { isOn: true })
    setTurning(false)
    if ('value' in asked) setDevices(asked.value)
    setFailure('sentence' in asked ? asked.sentence : undefined)
  }
  const revoke = useRevoke(lookAgain)
  const summary = joined.length === 0 ? say('exercise.seats.none') : listWords(joined.map(({ name }) => name))
  return (
    <Card title={say('exercise.seats')} level={2} summary={summary}>
      <div className={styles.form}>
        <p className={styles.quiet}>{say('exercise.seats.text')}</p>
        {!devices && failure !== undefined && <p role="status">{say('exercise.seats.not-here')}</p>}
        {devices && base === undefined && <p role="status">{say('exercise.seats.off')}</p>}
        {devices?.network && !devices.network.isOn && base === undefined && <Button size="s" label={say('exercise.seats.turn-on')} disabled={isTurning} onClick={() => { void turnOn() }} />}
        {devices && <p><ButtonLink size="s" look="quiet" href={devicesHref(exerciseHref(exercise.districtId, exercise.id))} label={say('exercise.seats.off.link')} iconAfter="arrowRight" onClick={onLeave} /> <span className={styles.quiet}>{say('exercise.seats.off.stops')}</span></p>}
        {base !== undefined && seat && (
          <>
            <ChoiceField label={say('exercise.seats.role')} value={seat.value} choices={seats} onCommit={choose} />
            <Segments label={say('exercise.seats.count')} value={count} choices={counts.map((value) => ({ value, label: say(`devices.uses.${value}`) }))} onCommit={setCount} />
            {hosts.length > 1 && <ChoiceField label={say('devices.address')} value={shownHost} choices={hosts.map((value) => ({ value, label: value }))} onCommit={setHost} />}
            <Button size="s" icon="add" label={say('exercise.seats.make')} onClick={() => { void make() }} />
          </>
        )}
        <div role="status">{made && base !== undefined && <ShownCode base={base} made={made.code} title={say('exercise.seats.for', { seat: made.seat })} />}</div>
        {devices && failure !== undefined && <p role="alert">{failure}</p>}
      </div>
      <ul className={styles.rows}>
        {joined.map(({ id, name, label }) => (
          <li key={id} className={styles.line}>
            <span className={styles.words}>{say('exercise.seats.one', { seat: label, name })} <span className={styles.quiet}>{say(present.includes(id) ? 'exercise.seats.here' : 'exercise.seats.away')}</span></span>
            <Button size="s" look="quiet" label={say('devices.revoke')} aria-label={say('devices.revoke-of', { name })} onClick={() => { void revoke(id, name) }} />
          </li>
        ))}
      </ul>
    </Card>
  )
}
