'use client'

import type { StopOutcome, StopReport } from '@/lib/advise'
import { formatChange, formatGiven, formatMinutes, say, type NameOf } from '../_text'
import '../_text/areas/advice'
import { Caution } from '../_ui/caution'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './advice.module.css'
import { stopText } from './change-text'

/** For each part of the plan: how long there is water when it stops, and what is left. */
export function StopsPart({ stops, dependable_gpm, names }: { stops: StopReport; dependable_gpm: number | undefined; names: NameOf }) {
  const [system] = useUnitSystem()
  const flow = (value: number) => formatGiven(value, system)
  const name = (id: string) => names(id) ?? id
  const dry = ({ dry_s }: StopOutcome) => (dry_s === null ? say('advice.stops.lasts') : dry_s < 1 ? say('advice.stops.at-once') : formatMinutes(dry_s, 'down'))
  // Queues can bite: without a tender or a bay a plan may even hold a little more, and then nothing is lost.
  const lost = ({ flowAfter_gpm, lost_gpm }: StopOutcome) => {
    if (lost_gpm > 0) return formatChange(flowAfter_gpm, stops.held_gpm, system)
    return flow(flowAfter_gpm) === flow(stops.held_gpm) ? say('advice.stops.lost.none') : say('advice.stops.lost.gains', { gain: formatChange(stops.held_gpm, flowAfter_gpm, system) })
  }
  const { worst, onlyDraftSiteId } = stops
  const spare = stops.outcomes.find(({ kind, subjectIds }) => kind === 'fillPumper' && subjectIds[1] === onlyDraftSiteId)?.spare
  if (stops.flow_gpm <= 0 || !worst) return <p>{say('advice.stops.none')}</p>
  const what = stopText(worst, names)
  return (
    <>
      <p>{say('advice.stops.lead', { flow: flow(stops.flow_gpm), held: flow(stops.held_gpm) })}</p>
      <p className={styles.worst}>
        {dependable_gpm === undefined
          ? say('advice.stops.worst', { what, flow: flow(worst.flowAfter_gpm) })
          : say('advice.stops.worst.dependable', { dependable: flow(dependable_gpm), what, flow: flow(worst.flowAfter_gpm) })}
      </p>
      {onlyDraftSiteId && (
        <p className={styles.recommend}>
          {spare
            ? say('advice.stops.one-draft.spare', { site: name(onlyDraftSiteId), spare: name(spare.apparatusId), flow: flow(spare.flow_gpm) })
            : say('advice.stops.one-draft', { site: name(onlyDraftSiteId) })}
        </p>
      )}
      <DataTable
        caption={say('advice.stops.table')} isCaptionHidden rows={stops.outcomes} rowKey={({ id }) => id}
        columns={[
          { key: 'what', head: say('advice.stops.what'), cell: (row) => <span className={styles.what}>{stopText(row, names)}</span> },
          { key: 'dry', head: say('advice.stops.dry'), isNumber: true, cell: dry, sortBy: ({ dry_s }) => dry_s ?? undefined },
          { key: 'after', head: say('advice.stops.after'), isNumber: true, cell: ({ flowAfter_gpm }) => flow(flowAfter_gpm), sortBy: ({ flowAfter_gpm }) => flowAfter_gpm },
          { key: 'lost', head: say('advice.stops.lost', { held: flow(stops.held_gpm) }), isNumber: true, cell: lost, sortBy: ({ lost_gpm }) => lost_gpm },
          {
            key: 'spare', head: say('advice.stops.spare'),
            cell: (row) => (row.spare ? say('advice.stops.spare.cell', { name: name(row.spare.apparatusId), flow: flow(row.spare.flow_gpm) }) : row.kind === 'fillPumper' || row.kind === 'dumpPumper' ? say('advice.stops.spare.none') : ''),
          },
        ]}
      />
      <Caution kinds={['planning-aid']} />
    </>
  )
}
