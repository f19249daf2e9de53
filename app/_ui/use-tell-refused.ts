'use client'

import { useCallback } from 'react'
import type { Issue } from '@/lib/issue'
import { sayIssue } from '../_text'
import { useToast } from './toast'
import { useUnitSystem } from './unit-system-context'

/** Tells in a line why an act was refused, if it was. @returns whether it was */
export function useTellRefused(): (refused: Issue | undefined) => boolean {
  const toast = useToast()
  const [system] = useUnitSystem()
  return useCallback((refused) => {
    if (refused) toast({ text: sayIssue(refused, () => undefined, system), look: 'danger' })
    return refused !== undefined
  }, [toast, system])
}
