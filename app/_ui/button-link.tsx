import Link from 'next/link'
import { Icon } from '../_look/icon'
import styles from './button.module.css'
import type { ButtonProps } from './button'
import { joinClasses } from './join-classes'

export type ButtonLinkProps = Pick<ButtonProps, 'label' | 'look' | 'icon' | 'iconAfter' | 'size' | 'className'> & { href: string; /** On the way there. */ onClick?: () => void }

/** A way to another page that looks like a button. */
export function ButtonLink({ href, label, look = 'plain', icon, iconAfter, size = 'm', className, onClick }: ButtonLinkProps) {
  return (
    <Link href={href} {...(onClick && { onClick })} className={joinClasses(styles.button, styles[look], size === 's' && styles.small, className)}>
      {icon && <Icon name={icon} />}
      <span className={styles.label}>{label}</span>
      {iconAfter && <Icon name={iconAfter} size={14} />}
    </Link>
  )
}
