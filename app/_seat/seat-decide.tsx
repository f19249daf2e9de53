'use client'

import { useState } from 'react'
import { seatDecisions, type SeatDecision } from '@/lib/exercise'
import type { Change } from '@/lib/plan'
import { listWords, say, type NameOf } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { ChoiceField, type Choice } from '../_ui/choice-field'
import { QuantityField } from '../_ui/quantity-field'
import { Segments } from '../_ui/segments'
import type { SeatInfo } from './seat-messages'
import styles from './seat.module.css'

/** What is decided from a seat: only what its role may. */
export function SeatDecide({ info, names, isOpen, onDecide }: { info: SeatInfo; names: NameOf; isOpen: boolean; onDecide: (change: Change) => void }) {
  const { choices, role, siteId } = info
  const kinds = (seatDecisions[role] as readonly SeatDecision[]).filter((kind) => kind !== 'lay' || choices.lays.length > 0)
  const [kind, setKind] = useState<SeatDecision>(kinds[0] ?? 'send')
  const [tenderId, setTender] = useState<string>()
  const [fillSiteId, setFill] = useState<string>()
  const [dumpSiteId, setDump] = useState<string>()
  const [layId, setLay] = useState<string>()
  const [flow_gpm, setFlow] = useState<number>()
  const named = (ids: readonly string[]): Choice<string>[] => ids.map((id) => ({ value: id, label: names(id) ?? id }))
  const change = changeOf(kind, { tenderId, fillSiteId, dumpSiteId, layId, flow_gpm, siteId })
  const missing = [
    ...((kind === 'send' || kind === 'release') && tenderId === undefined ? [say('exercise.decide.tender')] : []),
    ...(kind === 'send' && (fillSiteId ?? dumpSiteId) === undefined ? [say('exercise.decide.either', { one: say('exercise.decide.to-fill'), other: say('exercise.decide.to-dump') })] : []),
    ...(kind === 'lay' && layId === undefined ? [say('exercise.decide.site')] : []),
    ...(kind === 'demand' && flow_gpm === undefined ? [say('exercise.decide.flow')] : []),
  ]
  const isWhole = (kind === 'fill' || kind === 'leak') && info.isAmiss === false
  const why = !isOpen ? say('exercise.seat.shut') : isWhole ? say(`exercise.seat.in-order.${kind}`) : missing.length > 0 ? say('exercise.decide.missing', { fields: listWords(missing) }) : undefined
  const act = () => {
    if (!change) return
    onDecide(change)
    setTender(undefined); setFill(undefined); setDump(undefined); setLay(undefined); setFlow(undefined)
  }
  return (
    <div className={styles.form}>
      {kinds.length > 1 && <Segments label={say('exercise.decide.what')} value={kind} choices={kinds.map((value) => ({ value, label: say(`exercise.decide.${value}`) }))} onCommit={setKind} />}
      {(kind === 'send' || kind === 'release') && <ChoiceField label={say('exercise.decide.tender')} value={tenderId} choices={named(choices.tenders)} onCommit={setTender} />}
      {kind === 'send' && <ChoiceField label={say('exercise.decide.to-fill')} none={say('exercise.decide.same')} value={fillSiteId} choices={named(choices.fills)} onCommit={setFill} />}
      {kind === 'send' && <ChoiceField label={say('exercise.decide.to-dump')} none={say('exercise.decide.same')} value={dumpSiteId} choices={named(choices.dumps)} onCommit={setDump} />}
      {kind === 'lay' && <ChoiceField label={say('exercise.decide.site')} value={layId} choices={named(choices.lays)} onCommit={setLay} />}
      {kind === 'demand' && <QuantityField label={say('exercise.decide.flow')} unit="gpm" value={flow_gpm} hasMark={false} min={0} max={20_000} onCommit={({ value }) => { setFlow(value) }} />}
      <Button look="primary" label={say(`exercise.seat.do.${kind}`)} whyNot={why} onClick={act} />
      {why !== undefined && <p className={styles.quiet}>{why}</p>}
      {role === 'waterSupply' && <p className={styles.quiet}>{say('exercise.seat.ask')}</p>}
    </div>
  )
}

type Chosen = Partial<Record<'tenderId' | 'fillSiteId' | 'dumpSiteId' | 'layId' | 'siteId', string>> & { flow_gpm?: number }

function changeOf(kind: SeatDecision, { tenderId, fillSiteId, dumpSiteId, layId, flow_gpm, siteId }: { [K in keyof Chosen]: Chosen[K] | undefined }): Change | undefined {
  switch (kind) {
    case 'send':
      return tenderId !== undefined && (fillSiteId ?? dumpSiteId) !== undefined ? { kind: 'sendTender', tenderId, ...(fillSiteId !== undefined && { fillSiteId }), ...(dumpSiteId !== undefined && { dumpSiteId }) } : undefined
    case 'release':
      return tenderId === undefined ? undefined : { kind: 'tenderOut', tenderId }
    case 'lay':
      return layId === undefined ? undefined : { kind: 'layRate', layId, rateShare: 1 }
    case 'demand':
      return flow_gpm === undefined ? undefined : { kind: 'demand', flow_gpm }
    case 'fill':
      return siteId === undefined ? undefined : { kind: 'fillRate', fillSiteId: siteId, rateShare: 1 }
    case 'leak':
      return siteId === undefined ? undefined : { kind: 'tankLeak', dumpSiteId: siteId, leak_gpm: 0 }
  }
}
