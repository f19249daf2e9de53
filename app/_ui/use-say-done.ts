'use client'

import { useCallback } from 'react'
import { getClient } from '../_client'
import { useToast } from './toast'
import { useTellRefused } from './use-tell-refused'

/** Tells in a line of the act just done, with the way to take back that act, whatever is done before the line goes. */
export function useSayDone(): (text: string) => void {
  const toast = useToast()
  const tellRefused = useTellRefused()
  return useCallback((text) => {
    const actId = getClient().lastActId()
    const takeBack = async () => {
      const refused = await getClient().undo(actId)
      tellRefused(refused)
    }
    toast({ text, ...(actId !== undefined && { onUndo: () => { void takeBack() } }) })
  }, [toast, tellRefused])
}
