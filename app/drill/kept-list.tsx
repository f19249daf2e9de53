'use client'

import { findMessage, formatDay, say, type TextKey, isTextKey } from '../_text'
import '../_text/areas/drill'
import { Button } from '../_ui/button'
import { DataTable } from '../_ui/data-table'
import styles from './drill.module.css'
import { DRILL_MODEL, type KeptRun } from './kept-runs'

export type KeptListProps = { runs: readonly KeptRun[]; onShow: (run: KeptRun) => void; onDelete: (run: KeptRun) => void }

/** Runs kept on this device. */
export function KeptList({ runs, onShow, onDelete }: KeptListProps) {
  return (
    <DataTable
      caption={say('drill.kept')}
      rows={runs}
      rowKey={({ id }) => id}
      empty={say('drill.kept.none')}
      columns={[
        { key: 'name', head: say('drill.keep.name'), cell: ({ name }) => name, sortBy: ({ name }) => name },
        { key: 'at', head: say('drill.kept.when'), cell: ({ at }) => formatDay(at), sortBy: ({ at }) => at },
        { key: 'scenario', head: say('drill.kept.scenario'), cell: ({ scenario }) => scenarioWords(scenario) },
        { key: 'points', head: say('drill.kept.points'), isNumber: true, cell: ({ points }) => points, sortBy: ({ points }) => points },
        { key: 'actions', head: say('drill.kept.actions'), cell: (run) => (
          <span className={styles.rowActions}>
            {run.model === DRILL_MODEL
              ? <Button size="s" look="quiet" label={say('drill.kept.show')} onClick={() => { onShow(run) }} />
              : <span className={styles.quiet}>{say('drill.kept.other-model')}</span>}
            <Button size="s" look="quiet" icon="trash" label={say('drill.kept.delete')} onClick={() => { onDelete(run) }} />
          </span>
        ) },
      ]}
    />
  )
}

function scenarioWords(code: string): string {
  const key = `drill.scenario.${code}`
  return isTextKey(key) ? say(key satisfies TextKey) : findMessage('drill.scenario.unknown') ?? code
}
