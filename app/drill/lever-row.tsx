'use client'

import { useId } from 'react'
import { say } from '../_text'
import '../_text/areas/drill'
import { leverKeys } from './keys'
import styles from './lever-row.module.css'
import type { LeverName } from './lever'

export type LeverRowProps = {
  lever: LeverName
  onSet: (position: number) => void
  onTap: (direction: 1 | -1) => void
  onHold: (direction: 1 | -1 | 0) => void
}

/** One control on a scale: less, the lever itself, more. The lever is uncontrolled: the desk moves it by its element. */
export function LeverRow({ lever, onSet, onTap, onHold }: LeverRowProps) {
  const id = useId()
  const name = say(`drill.control.${lever}`)
  const { more, less } = leverKeys[lever]
  const press = (direction: 1 | -1) => ({
    onPointerDown: (event: React.PointerEvent<HTMLButtonElement>) => {
      if (event.button !== 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      onHold(direction)
    },
    onPointerUp: () => { onHold(0) },
    onPointerCancel: () => { onHold(0) },
    onLostPointerCapture: () => { onHold(0) },
    // A click that comes from the keyboard has no pointer behind it.
    onClick: (event: React.MouseEvent<HTMLButtonElement>) => { if (event.detail === 0) onTap(direction) },
    onContextMenu: (event: React.MouseEvent) => { event.preventDefault() },
  })
  return (
    <div className={styles.row}>
      <span className={styles.words}>
        <label htmlFor={id} className={styles.name}>{name} <kbd className={styles.keys} aria-hidden="true">{`${less} ${more}`}</kbd></label>
        <output className={styles.value} data-lever-value={lever} htmlFor={id} aria-live="off" />
      </span>
      <button type="button" className={styles.step} aria-label={say('drill.control.close', { control: name })} {...press(-1)}><span aria-hidden="true">−</span></button>
      <input
        id={id}
        type="range"
        className={styles.lever}
        min={0}
        max={100}
        step={1}
        defaultValue={0}
        data-lever={lever}
        onInput={(event) => { onSet(Number(event.currentTarget.value) / 100) }}
      />
      <button type="button" className={styles.step} aria-label={say('drill.control.open', { control: name })} {...press(1)}><span aria-hidden="true">+</span></button>
    </div>
  )
}
