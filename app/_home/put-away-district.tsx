'use client'

import { getClient } from '../_client'
import { say } from '../_text'
import '../_text/areas/home'
import { Button } from '../_ui/button'
import { useToast } from '../_ui/toast'
import { useTellRefused } from '../_ui/use-tell-refused'

/** Puts a district away with all that belongs to it; the line that says so, and the list of what was put away, bring it back. */
export function PutAwayDistrict({ id, name }: { id: string; name: string }) {
  const toast = useToast()
  const tellRefused = useTellRefused()
  const putAway = async () => {
    const refused = await getClient().remove(id, { label: say('home.put-away.name', { name }) })
    if (!tellRefused(refused)) toast({ text: say('home.was-put-away', { name }), onUndo: () => { void getClient().bringBack(id) } })
  }
  return <Button size="s" look="quiet" icon="trash" label={say('home.put-away.do')} aria-label={say('home.put-away.name', { name })} onClick={() => { void putAway() }} />
}
