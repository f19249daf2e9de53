import { Shell } from './_frame/shell'
import { say } from './_text'
import { ButtonLink } from './_ui/button-link'
import { EmptyState } from './_ui/empty-state'
import styles from './_ui/message-page.module.css'

/** There is nothing at this address. */
export default function NotFound() {
  return (
    <Shell title={say('shell.not-found')}>
      <div className={styles.page}>
        <EmptyState title={say('shell.not-found')} text={say('shell.not-found.text')}>
          <ButtonLink href="/" look="primary" icon="home" label={say('shell.home')} />
        </EmptyState>
      </div>
    </Shell>
  )
}
