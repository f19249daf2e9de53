'use client'

import type { TerrainSet } from '@/lib/plan'
import { formatDay, formatQuantity, formatShare, listWords, say } from '../_text'
import '../_text/areas/survey'
import { Icon } from '../_look/icon'
import { Button } from '../_ui/button'
import { FileDrop } from '../_ui/file-drop'
import { IssueList } from '../_ui/issue-list'
import { ProgressBar } from '../_ui/progress-bar'
import { QuantityField } from '../_ui/quantity-field'
import { TextField } from '../_ui/text-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './import.module.css'
import { useSurvey } from './survey-context'
import type { ElevationImportDesk } from './use-elevation-import'

const FILE_KINDS = '.tif,.tiff,.hgt,.gz,.zip'

/** The district's elevation: where it is from, how good it is, and the place to bring it in. */
export function ElevationPanel({ elevationImport: { state, run, cancel, close } }: { elevationImport: ElevationImportDesk }) {
  const { district: { terrain } } = useSurvey()
  const isBusy = state.kind === 'reading' || state.kind === 'keeping'
  return (
    <div className={styles.panel}>
      <p className={styles.quiet}>{say('survey.elevation.what')}</p>
      {terrain && <Held terrain={terrain} />}
      {state.kind === 'reading' && <ProgressBar label={say('survey.elevation.reading', { count: state.fileNames.length, file: state.fileNames[0] ?? '' })} share={state.share} onCancel={cancel} />}
      {state.kind === 'keeping' && <ProgressBar label={say('survey.elevation.keeping')} />}
      {state.kind === 'failed' && <p className={styles.failed} role="alert"><Icon name="warn" /> <span>{state.sentence}</span></p>}
      {state.kind === 'done' && <Outcome state={state} onClose={close} />}
      {!isBusy && state.kind !== 'done' && (
        <FileDrop name={say('survey.elevation.choose')} label={say(terrain ? 'survey.elevation.choose-again' : 'survey.elevation.choose')} look="plain" accept={FILE_KINDS} isMany onFiles={run}>
          <p className={styles.quiet}>{say('survey.elevation.drop')}</p>
        </FileDrop>
      )}
      {!isBusy && !terrain && <p className={styles.quiet}>{say('survey.elevation.where')}</p>}
    </div>
  )
}

/** What the district has: its heights are as good as somebody says they are. */
function Held({ terrain }: { terrain: TerrainSet }) {
  const { district, edit } = useSurvey()
  const [system] = useUnitSystem()
  const set = (change: Partial<TerrainSet>, label: string) => { edit({ kind: 'setFields', set: { terrain: { ...terrain, ...change } } }, label) }
  const isStated = terrain.doubtBasis === 'stated'
  return (
    <>
      <p className={styles.has}>
        {say('survey.elevation.has', { file: terrain.name, day: formatDay(terrain.importedOn), step: formatQuantity(terrain.step_ft ?? 0, 'ft', system, { digits: 0 }) })}
      </p>
      <QuantityField
        key={district.id} label={say('survey.elevation.doubt')} unit="ft" hint={say('survey.elevation.doubt.hint')} min={0} max={300} hasMark={!isStated}
        value={isStated ? terrain.verticalDoubt_ft : undefined}
        standIn={terrain.verticalDoubt_ft === undefined ? undefined : {
          value: terrain.verticalDoubt_ft, mark: terrain.doubtBasis === 'published' ? 'handbook' : 'assumed',
          source: say(terrain.doubtBasis === 'published' ? 'survey.elevation.doubt.published' : 'survey.elevation.doubt.assumed'),
        }}
        onCommit={({ value }) => { if (value !== undefined) set({ verticalDoubt_ft: value, doubtBasis: 'stated' }, say('survey.elevation.doubt.edit')) }}
      />
      <TextField label={say('survey.elevation.attribution')} hint={say('survey.elevation.attribution.hint')} value={terrain.attribution} maxLength={400} onCommit={(attribution = '') => { set({ attribution }, say('survey.elevation.attribution')) }} />
    </>
  )
}

function Outcome({ state: { summary, issues }, onClose }: { state: ElevationImportDesk['state'] & { kind: 'done' }; onClose: () => void }) {
  const [system] = useUnitSystem()
  const feet = (value_ft: number) => formatQuantity(value_ft, 'ft', system, { digits: 0 })
  return (
    <div className={styles.outcome} role="status">
      <p className={styles.done}>{say('survey.elevation.done', { file: listWords(summary.fileNames), low: feet(summary.lowest_ft), high: feet(summary.highest_ft), step: feet(summary.step_ft), covered: formatShare(summary.coveredShare) })}</p>
      {issues.length > 0 && <IssueList issues={issues} names={() => undefined} label={say('survey.import.issues')} />}
      <div className={styles.buttons}><Button size="s" icon="check" label={say('survey.import.close')} onClick={onClose} /></div>
    </div>
  )
}
