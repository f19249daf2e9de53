'use client'

import { createContext, use, useLayoutEffect, useMemo } from 'react'
import type { ReactNode } from 'react'
import { findTheme, THEME_COOKIE } from '../_look/theme'
import type { Theme } from '../_look/theme'
import { useChoice } from './use-choice'

type Value = readonly [theme: Theme | undefined, choose: (theme: Theme | undefined) => void]

const ThemeContext = createContext<Value | undefined>(undefined)

/** Holds the light of the screen. The server wrote the first one into the page; a choice takes hold at once and is remembered. */
export function ThemeProvider({ initial, children }: { initial: Theme | undefined; children: ReactNode }) {
  const [name, choose] = useChoice(THEME_COOKIE, initial)
  const theme = findTheme(name)
  useLayoutEffect(() => {
    const { dataset } = document.documentElement
    if (theme === undefined) delete dataset.theme
    else dataset.theme = theme
  }, [theme])
  const value = useMemo<Value>(() => [theme, choose], [theme, choose])
  return <ThemeContext value={value}>{children}</ThemeContext>
}

/** The chosen light, undefined for the device's own, and the way to change it. */
export function useTheme(): Value {
  const value = use(ThemeContext)
  if (!value) throw new Error('useTheme stands outside ThemeProvider')
  return value
}
