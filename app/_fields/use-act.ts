'use client'

import { useCallback } from 'react'
import type { EditBody } from '@/lib/plan'
import { getClient } from '../_client'
import { say, sayIssue, type NameOf } from '../_text'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useSayDone } from '../_ui/use-say-done'

export type Act = {
  /** One act on the document; a refusal is told in a line. @returns whether it was done */
  edit(body: EditBody | readonly EditBody[], label: string): boolean
  /** The same for what takes something away: the line that tells of it has the way back. */
  remove(body: readonly EditBody[], name: string): void
}

/** Changes a document as the user asks, and says so where that needs a line. */
export function useAct(docId: string, names: NameOf): Act {
  const toast = useToast()
  const sayDone = useSayDone()
  const [system] = useUnitSystem()
  const edit = useCallback<Act['edit']>((body, label) => {
    const refused = getClient().edit(docId, body, { label })
    if (refused) toast({ text: sayIssue(refused, names, system), look: 'danger' })
    return !refused
  }, [docId, names, system, toast])
  const remove = useCallback<Act['remove']>((body, name) => {
    if (!edit(body, say('kit.delete', { name }))) return
    sayDone(say('kit.deleted', { name }))
  }, [edit, sayDone])
  return { edit, remove }
}
