'use client'

import { useCallback } from 'react'
import { say } from '../_text'
import '../_text/areas/devices'
import { useToast } from '../_ui/toast'
import { ask } from './ask'

/**
 * Takes back what a device was let in to, at once, and says so with the way to let it in again.
 *
 * @param onChange called after either
 */
export function useRevoke(onChange: () => void): (id: string, name: string) => Promise<void> {
  const toast = useToast()
  return useCallback(async (id, name) => {
    const at = `/api/devices/grants/${encodeURIComponent(id)}`
    const letInAgain = async () => {
      const asked = await ask(at, 'PUT')
      toast('sentence' in asked ? { text: asked.sentence, look: 'danger' } : { text: say('devices.let-in-again', { name }) })
      onChange()
    }
    const asked = await ask(at, 'DELETE')
    toast('sentence' in asked ? { text: asked.sentence, look: 'danger' } : { text: say('devices.revoked', { name }), onUndo: () => { void letInAgain() } })
    onChange()
  }, [onChange, toast])
}
