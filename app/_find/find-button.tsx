'use client'

import dynamic from 'next/dynamic'
import { Popover } from 'radix-ui'
import { useEffect, useState } from 'react'
import { say } from '../_text'
import { Button } from '../_ui/button'
import styles from './find.module.css'

const FindPanel = dynamic(() => import('./find-panel').then((part) => part.FindPanel), { ssr: false, loading: () => <p className={styles.nothing} role="status">{say('find.loading')}</p> })

/** Opens the list of everything by its button or Ctrl-K; Escape closes it. */
export function FindButton() {
  const [isOpen, setOpen] = useState(false)
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey || event.key.toLowerCase() !== 'k') return
      event.preventDefault()
      setOpen((open) => !open)
    }
    window.addEventListener('keydown', onKey)
    return () => { window.removeEventListener('keydown', onKey) }
  }, [])
  return (
    <Popover.Root open={isOpen} onOpenChange={setOpen}>
      <Popover.Trigger asChild>
        <Button look="quiet" size="s" icon="search" label={say('find.open')} title={say('find.open.key')} />
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content className={styles.panel} align="end" sideOffset={6} collisionPadding={8} aria-label={say('find.title')}>
          <FindPanel onDone={() => { setOpen(false) }} />
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  )
}
