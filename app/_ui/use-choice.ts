'use client'

import { useCallback, useSyncExternalStore } from 'react'
import { findChoice, rememberChoice } from './cookie'

const listeners = new Set<() => void>()
const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/**
 * A choice of the screen as this device remembers it.
 *
 * @param initial as the server wrote it into the page; a page kept on the device may hold one of an earlier day
 */
export function useChoice(name: string, initial: string | undefined): readonly [value: string | undefined, choose: (value: string | undefined) => void] {
  const value = useSyncExternalStore(subscribe, () => findChoice(name), () => initial)
  const choose = useCallback((next: string | undefined) => {
    rememberChoice(name, next)
    for (const listener of listeners) listener()
  }, [name])
  return [value, choose]
}
