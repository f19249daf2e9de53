'use client'

import { useCallback } from 'react'
import { Popover } from 'radix-ui'
import { say } from '../_text'
import '../_text/areas/find'
import { Button } from '../_ui/button'
import styles from './find.module.css'
import { FindPanel } from './find-panel'

export type FindPopoverProps = { isOpen: boolean; onOpenChange: (isOpen: boolean) => void }

/** The button with the list of everything. */
export function FindPopover({ isOpen, onOpenChange }: FindPopoverProps) {
  const close = useCallback(() => { onOpenChange(false) }, [onOpenChange])
  return (
    <Popover.Root open={isOpen} onOpenChange={onOpenChange}>
      <Popover.Trigger asChild>
        <Button look="quiet" size="s" icon="search" label={say('shell.find')} title={say('shell.find.key')} />
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content className={styles.panel} align="end" sideOffset={6} collisionPadding={8} aria-label={say('find.title')}>
          <FindPanel onDone={close} />
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  )
}
