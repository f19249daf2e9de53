'use client'

import { useRef, useState, type DragEvent } from 'react'
import type { District } from '@/lib/plan'
import type { DocumentEntry } from '../_client'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { joinClasses } from '../_ui/join-classes'
import { ProgressBar } from '../_ui/progress-bar'
import styles from './exchange.module.css'
import { FoundPlaces } from './found-places'
import { useReadFile } from './use-read-file'

const FILE_KINDS = '.csv,.tsv,.txt,.geojson,.json,.kml,.kmz,.gpx,.xml'

/** A file of places: chosen, read, looked through, taken. */
export function BringIn({ district, plans }: { district: District; plans: readonly DocumentEntry[] }) {
  const { state, run, cancel, close } = useReadFile()
  return (
    <section className={styles.part} aria-labelledby="exchange-in">
      <h2 id="exchange-in" className={styles.subtitle}>{say('exchange.in')}</h2>
      {state.kind === 'reading'
        ? <ProgressBar label={say('exchange.reading', { file: state.fileName })} share={state.share} onCancel={cancel} />
        : <FileDrop isAgain={state.kind === 'read'} onFile={(file) => { void run(file) }} />}
      {state.kind === 'failed' && <p className={styles.failed} role="alert"><Icon name="warn" /> <span>{state.sentence}</span></p>}
      {state.kind === 'read' && <FoundPlaces key={state.fileName} district={district} plans={plans} file={state.file} fileName={state.fileName} onDone={close} />}
    </section>
  )
}

function FileDrop({ isAgain, onFile }: { isAgain: boolean; onFile: (file: File) => void }) {
  const input = useRef<HTMLInputElement>(null)
  const [isOver, setOver] = useState(false)
  const drop = (event: DragEvent) => {
    event.preventDefault()
    setOver(false)
    const [file] = event.dataTransfer.files
    if (file) onFile(file)
  }
  return (
    <div className={joinClasses(styles.drop, isOver && styles.over)} onDragOver={(event) => { event.preventDefault(); setOver(true) }} onDragLeave={() => { setOver(false) }} onDrop={drop}>
      <Button look={isAgain ? 'plain' : 'primary'} icon="add" label={say(isAgain ? 'exchange.choose-again' : 'exchange.choose')} onClick={() => input.current?.click()} />
      {!isAgain && <p className={styles.quiet}>{say('exchange.drop')}</p>}
      <input ref={input} type="file" accept={FILE_KINDS} hidden aria-label={say('exchange.choose')} onChange={(event) => { const [file] = event.target.files ?? []; if (file) onFile(file); event.target.value = '' }} />
    </div>
  )
}
