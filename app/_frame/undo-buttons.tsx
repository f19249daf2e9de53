'use client'

import { useCallback, useEffect } from 'react'
import { getClient, useUndo } from '../_client'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { useTellRefused } from '../_ui/use-tell-refused'

/** Undo and redo across everything this window did; also by Ctrl-Z and Ctrl-Shift-Z outside of entries. */
export function UndoButtons() {
  const { canUndo, canRedo, undoLabel = '', redoLabel = '' } = useUndo()
  const tellRefused = useTellRefused()
  const turn = useCallback((which: 'undo' | 'redo') => {
    void getClient()[which]().then(tellRefused)
  }, [tellRefused])
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const isEntry = event.target instanceof HTMLElement && event.target.matches('input:not([type=checkbox]):not([type=radio]), textarea')
      if (isEntry || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return
      event.preventDefault()
      turn(event.shiftKey ? 'redo' : 'undo')
    }
    window.addEventListener('keydown', onKey)
    return () => { window.removeEventListener('keydown', onKey) }
  }, [turn])
  return (
    <>
      <Button look="quiet" size="s" icon="undo" label={say('plan.undo')} title={canUndo ? say('plan.undo-what', { what: undoLabel }) : say('plan.undo.none')} disabled={!canUndo} onClick={() => { turn('undo') }} />
      <Button look="quiet" size="s" label={say('plan.redo')} title={canRedo ? say('plan.redo-what', { what: redoLabel }) : say('plan.redo.none')} disabled={!canRedo} onClick={() => { turn('redo') }} />
    </>
  )
}
