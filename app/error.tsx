'use client'

import { Shell } from './_frame/shell'
import { say } from './_text'
import { Button } from './_ui/button'
import { ButtonLink } from './_ui/button-link'
import { EmptyState } from './_ui/empty-state'
import styles from './_ui/message-page.module.css'

/** A screen broke: says so, and that what was saved is still there. */
export default function ErrorPage({ reset }: { error: Error; reset: () => void }) {
  return (
    <Shell title={say('shell.broken')}>
      <div className={styles.page}>
        <EmptyState title={say('shell.broken')} text={say('shell.broken.text')}>
          <Button look="primary" icon="undo" label={say('shell.broken.again')} onClick={reset} />
          <ButtonLink href="/" icon="home" label={say('shell.home')} />
        </EmptyState>
      </div>
    </Shell>
  )
}
