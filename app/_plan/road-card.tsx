'use client'

import { findLegNote, legUses, type LegUse } from '@/lib/supply'
import type { LegNote } from '@/lib/plan'
import { ItemFields } from '../_fields/item-context'
import { ItemQuantity } from '../_fields/item-inputs'
import { formatQuantity, formatTime, say } from '../_text'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { EvidenceChip } from '../_ui/evidence-chip'
import { useUnitSystem } from '../_ui/unit-system-context'
import { FigureRow } from './figure-row'
import { OneLanes } from './one-lanes'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'

/** The ways of the plan between its sites, each direction once; what an officer knows of them is entered here. */
export function RoadCard({ onVia, viaOf }: { onVia: (use: LegUse) => void; viaOf: LegUse | undefined }) {
  const { district, plan } = usePlanBoard()
  const seen = new Set<string>()
  const uses = legUses({ district, plan }).filter(({ fromId, toId }) => {
    const key = `${fromId}>${toId}`
    return seen.has(key) ? false : seen.add(key)
  })
  return (
    <div className={styles.stack}>
      {!district.roads && <p className={styles.quiet}>{say('plan.no-roads')}</p>}
      {uses.map((use) => <WayCard key={`${use.fromId}>${use.toId}`} use={use} onVia={onVia} isPicking={viaOf?.fromId === use.fromId && viaOf.toId === use.toId} />)}
      <OneLanes />
    </div>
  )
}

function WayCard({ use, onVia, isPicking }: { use: LegUse; onVia: (use: LegUse) => void; isPicking: boolean }) {
  const { district, plan, result, names, editPlan, newId } = usePlanBoard()
  const [system] = useUnitSystem()
  const { fromId, toId, apparatusId } = use
  const legs = (result?.legs ?? []).filter((leg) => leg.fromId === fromId && leg.toId === toId)
  const leg = legs[0]
  const known = findLegNote({ district, plan }, fromId, toId, apparatusId)
  const note: LegNote = known ?? { id: `${fromId}.${toId}`.slice(0, 64), fromId, toId }
  const summary = leg?.by
    ? say('plan.way.detail', { distance: formatQuantity(leg.distance_mi ?? 0, 'mi', system), time: formatTime(leg.travel_s ?? 0) })
    : say('plan.way.none')
  const set = (fields: Record<string, unknown>, evidence?: Record<string, unknown>) => {
    if (known) editPlan({ kind: 'setFields', collection: 'legNotes', id: known.id, set: nulled(fields), ...(evidence && { evidence: nulled(evidence) }) }, say('plan.ways'))
    else editPlan({ kind: 'addItem', collection: 'legNotes', item: { ...note, id: newId(), ...fields, ...(evidence && { evidence }) } }, say('plan.ways'))
  }
  return (
    <Card
      title={say('plan.way.title', { from: names(fromId) ?? fromId, to: names(toId) ?? toId })} level={4} summary={summary}
      {...(leg && leg.by === null && { edge: 'danger' as const })}
      aside={leg?.by && <EvidenceChip mark={leg.by === 'measured' ? 'measured' : leg.by === 'routed' ? 'computed' : leg.isStraight ? 'assumed' : 'handbook'} />}
    >
      <div className={styles.fields}>
        <div className={styles.figures}>
          {legs.filter(({ by }) => by !== null).map((one) => (
            <FigureRow key={one.apparatusId} figure={`leg/${one.apparatusId}/${fromId}/${toId}`} label={say('plan.way.by-unit', { name: names(one.apparatusId) ?? one.apparatusId, load: one.load })} value={formatTime(one.travel_s ?? 0)} />
          ))}
        </div>
        <ItemFields docId={plan.id} docKind="plan" collection="legNotes" item={note} onSet={set}>
          <ItemQuantity field="travel_s" label={say('plan.way.measured')} />
          <ItemQuantity field="distance_mi" label={say('plan.way.distance')} />
        </ItemFields>
        <div className={styles.buttons}>
          <Button look={isPicking ? 'primary' : 'plain'} size="s" icon="pick" label={say('plan.way.add-via')} aria-pressed={isPicking} onClick={() => { onVia(use) }} />
          {(known?.via?.length ?? 0) > 0 && <Button look="quiet" size="s" icon="undo" label={say('plan.way.clear-via')} onClick={() => { set({ via: undefined }) }} />}
        </div>
      </div>
    </Card>
  )
}

const nulled = (fields: Record<string, unknown>): Record<string, unknown> => Object.fromEntries(Object.entries(fields).map(([field, value]) => [field, value ?? null]))
