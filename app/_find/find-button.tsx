'use client'

import { useEffect, useState } from 'react'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { usePart } from '../_ui/use-part'
import type { FindPopoverProps } from './find-popover'

const loadWhole = () => import('./find-popover').then(({ FindPopover }) => FindPopover)

/** Opens the list of everything by its button or Ctrl-K; Escape closes it. */
export function FindButton() {
  const [isOpen, setOpen] = useState(false)
  const [Whole, ask] = usePart<FindPopoverProps>(loadWhole)
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey || event.key.toLowerCase() !== 'k') return
      event.preventDefault()
      ask()
      setOpen((open) => !open)
    }
    window.addEventListener('keydown', onKey)
    return () => { window.removeEventListener('keydown', onKey) }
  }, [ask])
  if (Whole) return <Whole isOpen={isOpen} onOpenChange={setOpen} />
  return (
    <Button
      look="quiet" size="s" icon="search" label={say('shell.find')} title={say('shell.find.key')}
      aria-haspopup="dialog" aria-expanded={false} onClick={() => { ask(); setOpen(true) }}
    />
  )
}
