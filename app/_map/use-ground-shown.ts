import { useState } from 'react'
import { findChoice, rememberChoice } from '../_ui/cookie'

const COOKIE = 'millrace-ground'

/** Whether the lie of the ground is drawn: yes until somebody turns it off on this device. */
export function useGroundShown(): readonly [isShown: boolean, show: (isShown: boolean) => void] {
  const [isShown, setShown] = useState(() => findChoice(COOKIE) !== 'off')
  return [isShown, (next) => {
    rememberChoice(COOKIE, next ? undefined : 'off')
    setShown(next)
  }]
}
