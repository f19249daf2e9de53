'use client'

import { useCallback } from 'react'
import { getClient } from '../_client'
import { sayIssue } from '../_text'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useSayDone } from '../_ui/use-say-done'

/** Puts a document away and says so, with the way back; a refusal is told in a line. `label` names the act, `done` is what is said of it. */
export function usePutAway(): (docId: string, label: string, done: string) => Promise<void> {
  const toast = useToast()
  const sayDone = useSayDone()
  const [system] = useUnitSystem()
  return useCallback(async (docId, label, done) => {
    const refused = await getClient().remove(docId, { label })
    if (refused) toast({ text: sayIssue(refused, () => undefined, system), look: 'danger' })
    else sayDone(done)
  }, [toast, sayDone, system])
}
