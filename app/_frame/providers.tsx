'use client'

import type { ReactNode } from 'react'
import type { Theme } from '../_look/theme'
import { UpdateNotice } from '../_shell/update-notice'
import type { UnitSystem } from '../_text'
import { ThemeProvider } from '../_ui/theme-context'
import { ToastProvider } from '../_ui/toast'
import { useKeptFocus } from '../_ui/use-kept-focus'
import { UnitSystemProvider } from '../_ui/unit-system-context'

/** What every screen may count on: units, light, and the line at the foot. */
export function Providers({ system, theme, children }: { system: UnitSystem; theme: Theme | undefined; children: ReactNode }) {
  useKeptFocus()
  return (
    <UnitSystemProvider initial={system}>
      <ThemeProvider initial={theme}>
        <ToastProvider>
          {children}
          <UpdateNotice />
        </ToastProvider>
      </ThemeProvider>
    </UnitSystemProvider>
  )
}
