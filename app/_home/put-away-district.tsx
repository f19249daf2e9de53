'use client'

import { getClient } from '../_client'
import { say, sayIssue } from '../_text'
import '../_text/areas/home'
import { Button } from '../_ui/button'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'

/** Puts a district away with all that belongs to it; the line that says so, and the list of what was put away, bring it back. */
export function PutAwayDistrict({ id, name }: { id: string; name: string }) {
  const toast = useToast()
  const [system] = useUnitSystem()
  const putAway = async () => {
    const refused = await getClient().remove(id, { label: say('home.put-away.name', { name }) })
    toast(refused ? { text: sayIssue(refused, () => undefined, system), look: 'danger' } : { text: say('home.was-put-away', { name }), onUndo: () => { void getClient().bringBack(id) } })
  }
  return <Button size="s" look="quiet" icon="trash" label={say('home.put-away.do')} aria-label={say('home.put-away.name', { name })} onClick={() => { void putAway() }} />
}
