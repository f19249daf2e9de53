'use client'

import { createContext, use, useMemo, useState } from 'react'
import type { ReactNode } from 'react'
import { UNIT_COOKIE } from '../_text'
import type { UnitSystem } from '../_text'
import { rememberChoice } from './cookie'

type Value = readonly [system: UnitSystem, choose: (system: UnitSystem) => void]

const UnitSystemContext = createContext<Value | undefined>(undefined)

/** Gives the screens below it the units in use; a choice is remembered on this device. */
export function UnitSystemProvider({ initial, children }: { initial: UnitSystem; children: ReactNode }) {
  const [system, setSystem] = useState(initial)
  const value = useMemo<Value>(() => [system, (next) => {
    rememberChoice(UNIT_COOKIE, next)
    setSystem(next)
  }], [system])
  return <UnitSystemContext value={value}>{children}</UnitSystemContext>
}

/** Units in use, and the way to change them. */
export function useUnitSystem(): Value {
  const value = use(UnitSystemContext)
  if (!value) throw new Error('useUnitSystem stands outside UnitSystemProvider')
  return value
}
