'use client'

import { formatNumber, formatQuantity, formatShare, say } from '../_text'
import '../_text/areas/survey'
import { Button } from '../_ui/button'
import { IssueList } from '../_ui/issue-list'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './import.module.css'
import type { ImportState } from './use-import'

/** What an import has brought in, and what about it needs a look. */
export function ImportOutcome({ outcome: { summary, issues, outsideCount }, onClose, onBrowse }: { outcome: ImportState & { kind: 'done' }; onClose: () => void; onBrowse: () => void }) {
  const [system] = useUnitSystem()
  const sourceCount = summary.waterAreaCount + summary.hydrantCount + summary.otherSourceCount
  const lines: readonly (readonly [string, string])[] = [
    [say('survey.came.roads'), formatNumber(summary.roadCount)],
    [say('survey.came.length'), formatQuantity(summary.road_mi, 'mi', system, { digits: 0 })],
    [say('survey.came.junctions'), formatNumber(summary.junctionCount)],
    [say('survey.came.connected'), formatShare(summary.connectedShare)],
    [say('survey.came.bridges'), formatNumber(summary.bridgeCount)],
    [say('survey.came.bridges-known'), formatNumber(summary.bridgeKnownCount)],
    [say('survey.came.weight-limits'), formatNumber(summary.weightLimitCount)],
    [say('survey.came.height-limits'), formatNumber(summary.heightLimitCount)],
    [say('survey.came.width-limits'), formatNumber(summary.widthLimitCount)],
    [say('survey.came.turns'), formatNumber(summary.turnRestrictionUsedCount)],
    [say('survey.came.water'), formatNumber(summary.waterAreaCount)],
    [say('survey.came.buildings'), formatNumber(summary.buildingCount)],
    [say('survey.came.hydrants'), formatNumber(summary.hydrantCount)],
    [say('survey.came.other-sources'), formatNumber(summary.otherSourceCount)],
  ]
  return (
    <div className={styles.outcome} role="status">
      <p className={styles.done}>{say('survey.import.done', { file: summary.fileName })}</p>
      <dl className={styles.figures}>
        {lines.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}
      </dl>
      {summary.bridgeKnownCount < summary.bridgeCount && <p className={styles.look}>{say('survey.import.bridges-unknown', { count: summary.bridgeCount - summary.bridgeKnownCount })}</p>}
      {outsideCount > 0 && <p className={styles.look}>{say('survey.import.outside', { count: outsideCount })}</p>}
      {issues.length > 0 && <IssueList issues={issues} names={() => undefined} label={say('survey.import.issues')} />}
      <div className={styles.buttons}>
        {sourceCount > 0 && <Button size="s" look="primary" iconAfter="arrowRight" label={say('survey.import.browse')} onClick={onBrowse} />}
        <Button size="s" icon="check" label={say('survey.import.close')} onClick={onClose} />
      </div>
    </div>
  )
}
