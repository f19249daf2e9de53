'use client'

import { useCallback } from 'react'
import { getClient } from '../_client'
import { sayIssue } from '../_text'
import { useToast } from './toast'
import { useUnitSystem } from './unit-system-context'

/** Tells in a line of the act just done, with the way to take back that act, whatever is done before the line goes. */
export function useSayDone(): (text: string) => void {
  const toast = useToast()
  const [system] = useUnitSystem()
  return useCallback((text) => {
    const actId = getClient().lastActId()
    const takeBack = async () => {
      const refused = await getClient().undo(actId)
      if (refused) toast({ text: sayIssue(refused, () => undefined, system), look: 'danger' })
    }
    toast({ text, ...(actId !== undefined && { onUndo: () => { void takeBack() } }) })
  }, [toast, system])
}
