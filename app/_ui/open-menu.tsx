'use client'

import { DropdownMenu } from 'radix-ui'
import { Icon } from '../_look/icon'
import { Button } from './button'
import { joinClasses } from './join-classes'
import type { MenuProps } from './menu'
import styles from './menu.module.css'

/** The button of a menu with its list, which is open at first: it comes when it is asked for. */
export function OpenMenu({ label, fullLabel, items, look = 'plain', size = 'm', icon }: MenuProps) {
  return (
    <DropdownMenu.Root modal={false} defaultOpen>
      <DropdownMenu.Trigger asChild>
        <Button label={label} aria-label={fullLabel} look={look} size={size} icon={icon} iconAfter="chevron" />
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content className={styles.menu} align="end" sideOffset={4} collisionPadding={8}>
          {items.map((item) => (
            <DropdownMenu.Item key={item.id} className={joinClasses(styles.item, item.isDanger && styles.danger)} disabled={item.isDisabled} onSelect={item.onSelect}>
              <span className={styles.sign}>{item.icon && <Icon name={item.icon} />}</span>
              {item.label}
            </DropdownMenu.Item>
          ))}
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  )
}
