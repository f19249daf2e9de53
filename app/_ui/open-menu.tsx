'use client'

import { DropdownMenu } from 'radix-ui'
import { Icon } from '../_look/icon'
import type { IconName } from '../_look/icon'
import { Button } from './button'
import type { ButtonProps } from './button'
import { joinClasses } from './join-classes'
import styles from './menu.module.css'

type MenuItem = {
  readonly id: string
  readonly label: string
  readonly icon?: IconName
  readonly isDanger?: boolean
  readonly isDisabled?: boolean
  readonly onSelect: () => void
}

export type MenuProps = {
  label: string
  /** What it is about too, for who does not see where it stands; begins with the label. */
  fullLabel?: string
  items: readonly MenuItem[]
  look?: ButtonProps['look']
  size?: ButtonProps['size']
  icon?: IconName
}

/** The button of a menu with its list, which is open at first: it comes when it is asked for. */
export function OpenMenu({ label, fullLabel, items, look = 'plain', size = 'm', icon }: MenuProps) {
  return (
    <DropdownMenu.Root modal={false} defaultOpen>
      <DropdownMenu.Trigger asChild>
        <Button label={label} aria-label={fullLabel} look={look} size={size} icon={icon} iconAfter="chevron" />
      </DropdownMenu.Trigger>
      {/* Within the page's main part: what lies beside it is passed over by who goes from part to part. */}
      <DropdownMenu.Portal container={document.querySelector('main')}>
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
