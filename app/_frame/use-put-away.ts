'use client'

import { useCallback } from 'react'
import { getClient } from '../_client'
import { useSayDone } from '../_ui/use-say-done'
import { useTellRefused } from '../_ui/use-tell-refused'

/** Puts a document away and says so, with the way back; a refusal is told in a line. `label` names the act, `done` is what is said of it. */
export function usePutAway(): (docId: string, label: string, done: string) => Promise<void> {
  const tellRefused = useTellRefused()
  const sayDone = useSayDone()
  return useCallback(async (docId, label, done) => {
    const refused = await getClient().remove(docId, { label })
    if (!tellRefused(refused)) sayDone(done)
  }, [tellRefused, sayDone])
}
