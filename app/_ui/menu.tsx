'use client'

import { Button } from './button'
import type { MenuProps } from './open-menu'
import { usePart } from './use-part'

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
