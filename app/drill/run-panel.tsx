'use client'

import { useCallback, useEffect, useId, useMemo, useRef, useState } from 'react'
import type { KeyboardEvent } from 'react'
import type { Drill } from '@/lib/priming/drill'
import { intakeGauge } from '@/lib/priming/drill'
import { displayUnit, formatClock, formatQuantity, formatShare, say } from '../_text'
import '../_text/areas/drill'
import { Button } from '../_ui/button'
import { useUnitSystem } from '../_ui/unit-system-context'
import { createDesk } from './desk'
import { Dial } from './dial'
import { dischargeAngle_deg, DISCHARGE_END_PSI, INTAKE_END_PSI, intakeAngle_deg, ticksTo, VACUUM_END_INHG } from './dial-scale'
import { createListener, dischargeWords, heardGauges, intakeWords, speedWords, tankWords } from './gauge-words'
import { findLeverKey, findSwitchKey, PAUSE_KEY, switchKeys } from './keys'
import { LeverRow } from './lever-row'
import { leverNames, switchNames, type LeverName, type SwitchName } from './lever'
import { beginMotion, findParts, paintPicture } from './paint-picture'
import { PanelPicture } from './panel-picture'
import shared from '../_look/shared.module.css'
import styles from './run-panel.module.css'

export type RunPanelProps = {
  drill: Drill
  /** Called once, when the run is over or was ended. */
  onOver: () => void
}

/** Readings in figures change this often. */
const READ_EVERY_S = 0.15

/** The pump panel of a run under way. */
export function RunPanel({ drill, onOver }: RunPanelProps) {
  const [system] = useUnitSystem()
  const root = useRef<HTMLElement>(null)
  const hintId = useId()
  const [isPaused, setPaused] = useState(false)
  const [isInside, setInside] = useState(true)
  const [heard, setHeard] = useState('')
  const over = useRef(onOver)
  useEffect(() => { over.current = onOver }, [onOver])

  const desk = useMemo(() => createDesk(drill, {
    onLever: (lever, position) => { showLever(root.current, lever, position) },
    onSwitch: (name, isOn) => { showSwitch(root.current, name, isOn) },
  }), [drill])

  useEffect(() => {
    const element = root.current
    if (!element) return
    for (const lever of leverNames) showLever(element, lever, 0)
    for (const name of switchNames) showSwitch(element, name, drill.controls[name] > 0)
    element.focus({ preventScroll: true })
    const parts = findParts(element)
    const motion = beginMotion()
    const isNews = createListener()
    const still = window.matchMedia('(prefers-reduced-motion: reduce)')
    let last_ms: number | undefined
    let unread_s = READ_EVERY_S
    let unpainted_s = 0
    let isPicturesTurn = false
    let handle = requestAnimationFrame(function paint(now_ms) {
      const frame_s = last_ms === undefined ? 0 : (now_ms - last_ms) / 1000
      last_ms = now_ms
      desk.frame(frame_s)
      // Needles move with every frame, water and dashes with every second one: a slow phone has one of them to paint at a time.
      unpainted_s += frame_s
      isPicturesTurn = !isPicturesTurn
      if (isPicturesTurn) {
        paintPicture(parts, drill, motion, still.matches || desk.isPaused() ? 0 : Math.min(0.1, unpainted_s))
        unpainted_s = 0
      }
      turn(parts, 'intake-needle', intakeAngle_deg(intakeGauge(drill.rig, drill.state)))
      turn(parts, 'discharge-needle', dischargeAngle_deg(drill.state.dischargePressure_psi))
      unread_s += frame_s
      if (unread_s >= READ_EVERY_S) {
        unread_s = 0
        write(parts, 'intake-reading', intakeWords(drill, system))
        write(parts, 'discharge-reading', dischargeWords(drill, system))
        write(parts, 'speed-reading', speedWords(drill))
        write(parts, 'tank-text', tankWords(drill))
        write(parts, 'lift', formatQuantity(drill.state.lift_ft, 'ft', system))
        write(parts, 'clock', formatClock(drill.state.time_s))
        if (!desk.isPaused() && isNews(drill)) setHeard(heardGauges(drill, system))
      }
      if (drill.isOver) over.current()
      else handle = requestAnimationFrame(paint)
    })
    return () => { cancelAnimationFrame(handle) }
  }, [drill, desk, system])

  const pause = useCallback((next: boolean) => {
    desk.setPaused(next)
    desk.letGo()
    setPaused(next)
    if (next) setHeard(say('drill.heard.paused'))
  }, [desk])

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const found = findLeverKey(event.key)
    const toggle = findSwitchKey(event.key)
    if (found) {
      if (!event.repeat) desk.holdLever(found.lever, found.direction, event.shiftKey)
    } else if (toggle && !event.repeat) desk.toggle(toggle)
    else if (event.key.toUpperCase() === PAUSE_KEY && !event.repeat) pause(!desk.isPaused())
    else return
    event.preventDefault()
  }
  const onKeyUp = (event: KeyboardEvent): void => {
    const found = findLeverKey(event.key)
    if (found) desk.holdLever(found.lever, 0)
  }

  const vacuum = ticksTo(VACUUM_END_INHG, 'inHg', system).map((tick) => ({ ...tick, angle_deg: intakeAngle_deg(-tick.at) }))
  const pressure = ticksTo(INTAKE_END_PSI, 'psi', system).map((tick) => ({ ...tick, angle_deg: intakeAngle_deg(tick.at) }))
  const discharge = ticksTo(DISCHARGE_END_PSI, 'psi', system).map((tick) => ({ ...tick, angle_deg: dischargeAngle_deg(tick.at) }))
  return (
    <section
      ref={root}
      className={styles.panel}
      tabIndex={-1}
      aria-label={say('drill.panel')}
      aria-describedby={hintId}
      data-hidden-inside={!isInside}
      onKeyDown={onKeyDown}
      onKeyUp={onKeyUp}
      onBlur={(event) => { if (!event.currentTarget.contains(event.relatedTarget)) desk.letGo() }}
    >
      <div className={styles.top}>
        <span className={styles.clock} data-part="clock" />
        <Button label={isPaused ? say('drill.go-on') : say('drill.pause')} onClick={() => { pause(!isPaused) }} className={styles.big} aria-keyshortcuts={PAUSE_KEY} />
        <Button label={say('drill.give-up')} onClick={() => { desk.giveUp(); over.current() }} className={styles.big} />
        <Button label={say('drill.end')} onClick={() => { over.current() }} className={styles.big} />
      </div>
      <div className={styles.picture}><PanelPicture /></div>
      <div className={styles.gauges} role="group" aria-label={say('drill.gauges')}>
        <Dial name={say('drill.gauge.intake')} part="intake" marks={[...vacuum, ...pressure]} zero_deg={0} units={[displayUnit('inHg', system).symbol, displayUnit('psi', system).symbol]} />
        <p className={styles.speed} title={say('drill.gauge.speed.means')}><output data-part="speed-reading" aria-live="off" /> <span>{say('drill.gauge.speed')}</span></p>
        <Dial name={say('drill.gauge.discharge')} part="discharge" marks={discharge} zero_deg={-120} units={[displayUnit('psi', system).symbol]} />
      </div>
      <div className={styles.controls} role="group" aria-label={say('drill.controls')}>
        {leverNames.map((lever) => (
          <LeverRow
            key={lever}
            lever={lever}
            onSet={(position) => { desk.setLever(lever, position) }}
            onTap={(direction) => { desk.tapLever(lever, direction) }}
            onHold={(direction) => { desk.holdLever(lever, direction) }}
          />
        ))}
        <div className={styles.switches}>
          {switchNames.map((name) => (
            <button key={name} type="button" className={styles.switch} data-switch={name} aria-pressed={false} aria-keyshortcuts={switchKeys[name]} onClick={() => { desk.toggle(name) }}>
              <span>{say(`drill.control.${name}`)} <kbd className={styles.key} aria-hidden="true">{switchKeys[name]}</kbd></span>
              <span className={styles.state} data-switch-state={name} />
            </button>
          ))}
        </div>
      </div>
      <label className={styles.inside}>
        <input type="checkbox" checked={isInside} onChange={(event) => { setInside(event.target.checked) }} />
        <span>{say('drill.inside')}</span>
      </label>
      <p id={hintId} className={shared.heard}>{say('drill.panel.hint')}</p>
      <p className={shared.heard} role="status" aria-live="polite">{heard}</p>
    </section>
  )
}

/** Turns a needle, if it moved as far as an eye can see. */
function turn(parts: ReadonlyMap<string, Element>, part: string, angle_deg: number): void {
  const element = parts.get(part)
  const transform = `rotate(${(Math.round(angle_deg * 2) / 2).toFixed(1)})`
  if (element && element.getAttribute('transform') !== transform) element.setAttribute('transform', transform)
}

function write(parts: ReadonlyMap<string, Element>, part: string, text: string): void {
  const element = parts.get(part)
  if (element && element.textContent !== text) element.textContent = text
}

function showLever(root: HTMLElement | null, lever: LeverName, position: number): void {
  const input = root?.querySelector<HTMLInputElement>(`[data-lever='${lever}']`)
  const value = root?.querySelector(`[data-lever-value='${lever}']`)
  if (!input || !value) return
  const percent = String(Math.round(position * 100))
  const words = lever === 'throttle' ? formatShare(Math.round(position * 100) / 100)
    : position <= 0 ? say('drill.shut') : position >= 1 ? say('drill.opened') : formatShare(Math.round(position * 100) / 100)
  // Laid out anew only at each whole percent: a held lever moves with every frame.
  if (input.dataset.at === `${percent} ${words}`) return
  input.dataset.at = `${percent} ${words}`
  if (input.value !== percent) input.value = percent
  input.style.setProperty('--at', `${percent}%`)
  input.setAttribute('aria-valuetext', words)
  value.textContent = words
}

function showSwitch(root: HTMLElement | null, name: SwitchName, isOn: boolean): void {
  root?.querySelector(`[data-switch='${name}']`)?.setAttribute('aria-pressed', String(isOn))
  const state = root?.querySelector(`[data-switch-state='${name}']`)
  if (state) state.textContent = name === 'drain' ? (isOn ? say('drill.opened') : say('drill.shut')) : (isOn ? say('drill.on') : say('drill.off'))
}
