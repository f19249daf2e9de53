'use client'

import { useState } from 'react'
import { getClient } from '../_client'
import { say, sayIssue } from '../_text'
import { Button } from '../_ui/button'
import { useUnitSystem } from '../_ui/unit-system-context'

/** Brings back what stands here and was put away; where that is not possible it says why. */
export function BringBack({ docId }: { docId: string }) {
  const [system] = useUnitSystem()
  const [why, setWhy] = useState<string>()
  const bringBack = async () => {
    const refused = await getClient().bringBack(docId)
    setWhy(refused && sayIssue(refused, () => undefined, system))
  }
  return (
    <>
      <Button look="primary" label={say('kit.bring-back')} onClick={() => { void bringBack() }} />
      {why !== undefined && <p role="alert">{why}</p>}
    </>
  )
}
