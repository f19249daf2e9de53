'use client'

import type { IconName } from '../_look/icon'
import { Button } from './button'
import type { ButtonProps } from './button'
import { usePart } from './use-part'

export type MenuItem = {
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

const loadList = () => import('./open-menu').then(({ OpenMenu }) => OpenMenu)

/** A button that opens a list of actions. */
export function Menu(props: MenuProps) {
  const { label, fullLabel, look = 'plain', size = 'm', icon } = props
  const [List, ask] = usePart<MenuProps>(loadList)
  if (List) return <List {...props} />
  return (
    <Button
      label={label} aria-label={fullLabel} look={look} size={size} icon={icon} iconAfter="chevron" aria-haspopup="menu" aria-expanded={false} onClick={ask}
      onKeyDown={(event) => {
        if (event.key !== 'ArrowDown') return
        event.preventDefault()
        ask()
      }}
    />
  )
}
