'use client'

import { placesOf, type District } from '@/lib/plan'
import { formatDay, say } from '../_text'
import '../_text/areas/survey'
import { Icon } from '../_look/icon'
import { FileDrop } from '../_ui/file-drop'
import { ProgressBar } from '../_ui/progress-bar'
import { ImportOutcome } from './import-outcome'
import styles from './import.module.css'
import type { RoadImport } from './use-import'

const FILE_KINDS = '.pbf,.osm,.gz,.json,.geojson,.xml'

/** How to get the roads of a district, and the place to bring them in. */
export function ImportPanel({ district, roadImport, onFile, onBrowse }: { district: District; roadImport: RoadImport; onFile: (file: File) => void; onBrowse: () => void }) {
  const { state, cancel, close } = roadImport
  return (
    <div className={styles.panel}>
      {district.roads && (
        <p className={styles.has}>
          {say('survey.import.has', { file: district.roads.name, day: formatDay(district.roads.importedOn) })}
          {district.roads.dataDate && <> {say('survey.import.data-date', { day: formatDay(district.roads.dataDate) })}</>}
          <span className={styles.attribution}>{district.roads.attribution}</span>
        </p>
      )}
      {state.kind === 'reading' && <ProgressBar label={say('survey.import.reading', { file: state.fileName })} share={state.share} onCancel={cancel} />}
      {state.kind === 'keeping' && <ProgressBar label={say('survey.import.keeping', { file: state.fileName })} />}
      {state.kind === 'failed' && <p className={styles.failed} role="alert"><Icon name="warn" /> <span>{state.sentence}</span></p>}
      {state.kind === 'done' && <ImportOutcome outcome={state} onClose={close} onBrowse={onBrowse} />}
      {state.kind !== 'reading' && state.kind !== 'keeping' && state.kind !== 'done' && (
        <FileDrop
          name={say('survey.import.choose')} label={say(district.roads ? 'survey.import.choose-again' : 'survey.import.choose')} look={district.roads ? 'plain' : 'primary'}
          accept={FILE_KINDS} onFiles={([file]) => { if (file) onFile(file) }}
        >
          <p className={styles.quiet}>{say('survey.import.drop')}</p>
          {district.roads && <p className={styles.quiet}>{say('survey.import.keeps')}</p>}
        </FileDrop>
      )}
      {state.kind !== 'done' && <Guide startsOpen={district.roads === undefined && placesOf(district).length === 0} />}
    </div>
  )
}

const steps = ['area', 'small', 'large', 'bring', 'check'] as const

/** In general words, where map data comes from and what to ask for. */
function Guide({ startsOpen }: { startsOpen: boolean }) {
  return (
    <details className={styles.guide} open={startsOpen}>
      <summary>{say('survey.guide.title')}</summary>
      <p>{say('survey.guide.what')}</p>
      <ol>
        {steps.map((step) => <li key={step}><strong>{say(`survey.guide.${step}`)}</strong> {say(`survey.guide.${step}.text`)}</li>)}
      </ol>
      <p>{say('survey.guide.licence')}</p>
    </details>
  )
}
