'use client'

import { useRef } from 'react'
import { getClient } from '../_client'
import { screenHref } from '../_links/screens'
import { Icon } from '../_look/icon'
import { listWords, say } from '../_text'
import '../_text/areas/archive'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { ProgressBar } from '../_ui/progress-bar'
import styles from './archive.module.css'
import { useRestore } from './use-restore'

/** Brings a district in from an archive file: all of it, or a sentence that says why not. */
export function OpenArchive() {
  const input = useRef<HTMLInputElement>(null)
  const { state, restore, stop } = useRestore(() => { void getClient().refreshList() })
  const isBusy = state.kind === 'sending' || state.kind === 'checking'
  return (
    <div className={styles.panel}>
      <p className={styles.quiet}>{say('archive.about')}</p>
      {!isBusy && <Button label={say('archive.open')} onClick={() => input.current?.click()} />}
      <input
        ref={input} type="file" accept=".zip,application/zip" hidden aria-label={say('archive.open')}
        onChange={(event) => { const [file] = event.target.files ?? []; if (file) restore(file); event.target.value = '' }}
      />
      <div className={styles.wide} role="status">
        {state.kind === 'sending' && <ProgressBar label={say('archive.sending', { file: state.file.name })} share={state.share} onCancel={stop} />}
        {state.kind === 'checking' && <ProgressBar label={say('archive.checking', { file: state.file.name })} />}
        {state.kind === 'done' && (
          <div className={styles.panel}>
            <p className={styles.done}>{say(`archive.${state.restored.outcome}`, { name: state.restored.name, count: state.restored.planCount })}</p>
            {state.restored.missing.length > 0 && <p className={styles.quiet}>{say('archive.missing', { kinds: listWords(state.restored.missing.map((kind) => say(`archive.kind.${kind}`))) })}</p>}
            <ButtonLink size="s" href={screenHref('survey', state.restored.districtId)} label={say('archive.go', { name: state.restored.name })} iconAfter="arrowRight" />
          </div>
        )}
        {state.kind === 'failed' && (
          <div className={styles.panel}>
            <p className={styles.failed}><Icon name="warn" /> <span>{state.sentence}</span></p>
            {state.canCopy && <Button size="s" label={say('archive.open-copy')} onClick={() => { restore(state.file, true) }} />}
          </div>
        )}
      </div>
    </div>
  )
}
