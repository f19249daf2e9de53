import type { ComponentPropsWithRef, MouseEvent } from 'react'
import { Icon } from '../_look/icon'
import type { IconName } from '../_look/icon'
import styles from './button.module.css'
import { joinClasses } from './join-classes'

export type ButtonProps = Omit<ComponentPropsWithRef<'button'>, 'children'> & {
  label: string
  /** `primary` once on a screen, `plain` for the rest, `quiet` inside rows and cards, `danger` for what destroys. */
  look?: 'primary' | 'plain' | 'quiet' | 'danger'
  icon?: IconName
  iconAfter?: IconName
  size?: 'm' | 's'
  /**
   * Why it does nothing yet. It stays where the keyboard comes to it: an entry is done with only as it is left, and a
   * button that wakes just then would be passed over.
   */
  whyNot?: string | undefined
}

/** A button says in words what it does; an icon only goes with them. */
export function Button({ label, look = 'plain', icon, iconAfter, size = 'm', className, type = 'button', whyNot, ...rest }: ButtonProps) {
  const waits = whyNot === undefined ? {} : { 'aria-disabled': true, title: whyNot, onClick: (event: MouseEvent) => { event.preventDefault() } }
  return (
    <button type={type} className={joinClasses(styles.button, styles[look], size === 's' && styles.small, className)} {...rest} {...waits}>
      {icon && <Icon name={icon} />}
      <span className={styles.label}>{label}</span>
      {iconAfter && <Icon name={iconAfter} size={14} />}
    </button>
  )
}
