import Link from 'next/link'
import type { ReactNode } from 'react'
import { FindButton } from '../_find/find-button'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import { LiveSaveState } from './live-save-state'
import { screenHref, screenIcons, screens } from '../_links/screens'
import type { Screen } from '../_links/screens'
import { DisplayChoice } from '../_ui/display-choice'
import { joinClasses } from '../_ui/join-classes'
import { Wordmark } from '../_ui/wordmark'
import shared from '../_look/shared.module.css'
import styles from './shell.module.css'

export type ShellProps = {
  /** The district that is open; without one there are no screens to go to. */
  district?: { readonly id: string; readonly name: string } | undefined
  screen?: Screen
  /** Heading of the page for those who hear it, where no visible one stands in the content. */
  title?: string
  /** Whether changes are kept; the live state of this window unless another is given. */
  saveState?: ReactNode
  /** Actions of the screen, at the right of the bar. */
  actions?: ReactNode
  /** `page` scrolls as a whole; `work` fills the window and scrolls inside. */
  layout?: 'page' | 'work'
  children: ReactNode
}

/** The frame of every screen: bar above, on a phone the screens below. */
export function Shell({ district, screen, title, saveState, actions, layout = 'page', children }: ShellProps) {
  return (
    <div className={joinClasses(styles.shell, styles[layout], district && styles.withScreens)}>
      <a className={styles.skip} href="#content">{say('shell.skip')}</a>
      <header className={styles.bar}>
        <Link href="/" className={styles.home} aria-label={district ? say('shell.home') : undefined}><Wordmark /></Link>
        {district && <span className={styles.district} title={district.name}>{district.name}</span>}
        {district && <Screens district={district} screen={screen} />}
        <div className={styles.find}><FindButton /></div>
        <div className={styles.end}>
          {saveState ?? (district && <LiveSaveState districtId={district.id} />)}
          {actions}
          <DisplayChoice hasHelp />
        </div>
      </header>
      <main id="content" className={styles.content} tabIndex={-1}>
        {title && <h1 className={shared.heard}>{title}</h1>}
        {children}
      </main>
    </div>
  )
}

function Screens({ district, screen }: { district: { readonly id: string }; screen: Screen | undefined }) {
  return (
    <nav className={styles.screens} aria-label={say('shell.screens')}>
      {screens.map((one) => (
        <Link key={one} href={screenHref(one, district.id)} className={styles.screen} aria-current={one === screen ? 'page' : undefined}>
          <Icon name={screenIcons[one]} />
          <span>{say(`shell.${one}`)}</span>
        </Link>
      ))}
    </nav>
  )
}
