'use client'

import { createContext, use, useMemo } from 'react'
import type { ReactNode } from 'react'
import { findUnitSystem, UNIT_COOKIE } from '../_text'
import type { UnitSystem } from '../_text'
import { useChoice } from './use-choice'

type Value = readonly [system: UnitSystem, choose: (system: UnitSystem) => void]

const UnitSystemContext = createContext<Value | undefined>(undefined)

/** Gives the screens below it the units in use; a choice is remembered on this device. */
export function UnitSystemProvider({ initial, children }: { initial: UnitSystem; children: ReactNode }) {
  const [name, choose] = useChoice(UNIT_COOKIE, initial)
  const system = findUnitSystem(name) ?? initial
  const value = useMemo<Value>(() => [system, choose], [system, choose])
  return <UnitSystemContext value={value}>{children}</UnitSystemContext>
}

/** Units in use, and the way to change them. */
export function useUnitSystem(): Value {
  const value = use(UnitSystemContext)
  if (!value) throw new Error('useUnitSystem stands outside UnitSystemProvider')
  return value
}
