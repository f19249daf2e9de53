'use client'

import { createContext, use, useMemo, useState } from 'react'
import type { ReactNode } from 'react'
import { THEME_COOKIE } from '../_look/theme'
import type { Theme } from '../_look/theme'
import { rememberChoice } from './cookie'

type Value = readonly [theme: Theme | undefined, choose: (theme: Theme | undefined) => void]

const ThemeContext = createContext<Value | undefined>(undefined)

/** Holds the light of the screen. The server wrote the first one into the page; a choice takes hold at once and is remembered. */
export function ThemeProvider({ initial, children }: { initial: Theme | undefined; children: ReactNode }) {
  const [theme, setTheme] = useState(initial)
  const value = useMemo<Value>(() => [theme, (next) => {
    const { dataset } = document.documentElement
    if (next === undefined) delete dataset.theme
    else dataset.theme = next
    rememberChoice(THEME_COOKIE, next)
    setTheme(next)
  }], [theme])
  return <ThemeContext value={value}>{children}</ThemeContext>
}

/** The chosen light, undefined for the device's own, and the way to change it. */
export function useTheme(): Value {
  const value = use(ThemeContext)
  if (!value) throw new Error('useTheme stands outside ThemeProvider')
  return value
}
