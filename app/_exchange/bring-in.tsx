'use client'

import type { District } from '@/lib/plan'
import type { DocumentEntry } from '../_client'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import '../_text/areas/exchange'
import { FileDrop } from '../_ui/file-drop'
import { ProgressBar } from '../_ui/progress-bar'
import styles from './exchange.module.css'
import { FoundPlaces } from './found-places'
import { useReadFile } from './use-read-file'

const FILE_KINDS = '.csv,.tsv,.txt,.geojson,.json,.kml,.kmz,.gpx,.xml'

/** A file of places: chosen, read, looked through, taken. */
export function BringIn({ district, plans }: { district: District; plans: readonly DocumentEntry[] }) {
  const { state, run, cancel, close } = useReadFile()
  const isAgain = state.kind === 'read'
  return (
    <section className={styles.part} aria-labelledby="exchange-in">
      <h2 id="exchange-in" className={styles.subtitle}>{say('exchange.in')}</h2>
      {state.kind === 'reading'
        ? <ProgressBar label={say('exchange.reading', { file: state.fileName })} share={state.share} onCancel={cancel} />
        : (
          <FileDrop
            name={say('exchange.choose')} label={say(isAgain ? 'exchange.choose-again' : 'exchange.choose')} look={isAgain ? 'plain' : 'primary'}
            accept={FILE_KINDS} onFiles={([file]) => { if (file) void run(file) }}
          >
            {!isAgain && <p className={styles.quiet}>{say('exchange.drop')}</p>}
          </FileDrop>
        )}
      {state.kind === 'failed' && <p className={styles.failed} role="alert"><Icon name="warn" /> <span>{state.sentence}</span></p>}
      {state.kind === 'read' && <FoundPlaces key={state.fileName} district={district} plans={plans} file={state.file} fileName={state.fileName} onDone={close} />}
    </section>
  )
}
