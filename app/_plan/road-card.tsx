'use client'

import { findLegNote, legUses, type LegUse } from '@/lib/supply'
import type { LegNote, Plan } from '@/lib/plan'
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
import { WayGrade } from './way-grade'

/** The two directions between a fill and a dump site are two ways: one may be sent by another road than the other. */
const isRound = (plan: Plan, { fromId, toId }: LegUse): boolean => [fromId, toId].every((id) => [...plan.fillSites, ...plan.dumpSites].some((site) => site.id === id))

/** Whether a use is the same way as another, whoever drives it. */
const isSameWay = (a: LegUse | undefined, b: LegUse): boolean => a?.fromId === b.fromId && a.toId === b.toId

/** The ways of the plan, each direction once: first those of the round, loaded and empty, then those from the stations. */
export function RoadCard({ onVia, viaOf }: { onVia: (use: LegUse) => void; viaOf: LegUse | undefined }) {
  const { district, plan } = usePlanBoard()
  const seen = new Set<string>()
  const uses = legUses({ district, plan }).filter(({ fromId, toId }) => {
    const key = `${fromId}>${toId}`
    return seen.has(key) ? false : seen.add(key)
  })
  const round = uses.filter((use) => isRound(plan, use))
  const coming = uses.filter((use) => !isRound(plan, use))
  const card = (use: LegUse) => <WayCard key={`${use.fromId}>${use.toId}`} use={use} onVia={onVia} isPicking={isSameWay(viaOf, use)} />
  return (
    <div className={styles.stack}>
      {!district.roads && <p className={styles.quiet}>{say('plan.no-roads')}</p>}
      {round.length > 0 && <h3 className={styles.groupTitle}>{say('plan.ways.round')}</h3>}
      {round.length > 0 && district.roads && <p className={styles.quiet}>{say('plan.ways.round-hint')}</p>}
      {round.sort((a, b) => Number(a.load === 'empty') - Number(b.load === 'empty')).map(card)}
      <OneLanes />
      {coming.length > 0 && <h3 className={styles.groupTitle}>{say('plan.ways.coming')}</h3>}
      {coming.map(card)}
    </div>
  )
}

function WayCard({ use, onVia, isPicking }: { use: LegUse; onVia: (use: LegUse) => void; isPicking: boolean }) {
  const { district, plan, result, isWorking, names, editPlan, newId } = usePlanBoard()
  const [system] = useUnitSystem()
  const { fromId, toId, apparatusId } = use
  const legs = (result?.legs ?? []).filter((leg) => leg.fromId === fromId && leg.toId === toId)
  const leg = legs[0]
  const known = findLegNote({ plan }, fromId, toId, apparatusId)
  const note: LegNote = known ?? { id: `${fromId}.${toId}`.slice(0, 64), fromId, toId }
  const isOfRound = isRound(plan, use)
  const viaCount = known?.via?.length ?? 0
  const summary = leg?.by
    ? say(isOfRound ? 'plan.way.detail-load' : 'plan.way.detail', { load: use.load, distance: formatQuantity(leg.distance_mi ?? 0, 'mi', system), time: formatTime(leg.travel_s ?? 0) })
    : say(isWorking ? 'plan.working' : 'plan.way.none')
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
        {leg?.by && <WayGrade legKey={leg.key} />}
        {isOfRound && <p className={styles.quiet}>{say('plan.way.own-direction', { load: use.load })}</p>}
        {viaCount > 0 && <p className={styles.quiet}>{say('plan.way.passes', { count: viaCount })}</p>}
        <div className={styles.buttons}>
          {district.roads && <Button look={isPicking ? 'primary' : 'plain'} size="s" icon={isPicking ? 'close' : 'pick'} label={say(isPicking ? 'plan.way.stop-via' : viaCount > 0 ? 'plan.way.add-more' : 'plan.way.add-via')} aria-pressed={isPicking} onClick={() => { onVia(use) }} />}
          {viaCount > 0 && <Button look="quiet" size="s" icon="undo" label={say('plan.way.clear-via')} onClick={() => { set({ via: undefined }) }} />}
        </div>
      </div>
    </Card>
  )
}

const nulled = (fields: Record<string, unknown>): Record<string, unknown> => Object.fromEntries(Object.entries(fields).map(([field, value]) => [field, value ?? null]))
