'use client'

import { useState } from 'react'
import { findWay, isInOrder } from '@/lib/exercise'
import type { Change } from '@/lib/plan'
import { say } from '../../_text'
import '../../_text/areas/exercise'
import { ChoiceField } from '../../_ui/choice-field'
import { QuantityField } from '../../_ui/quantity-field'
import { DoButton } from './do-button'
import { choicesOf, unitChoices } from './fields'
import type { DecisionForm } from './form'

export const wordKinds = ['send', 'call', 'release', 'demand', 'fill', 'leak', 'lay', 'road'] as const
export type WordKind = (typeof wordKinds)[number]

/** Decisions that are a word over the radio, and one more tender. */
export function WordForm({ kind, session, names, by, isOff, decide, decidePlan, done }: DecisionForm & { kind: WordKind }) {
  const [tenderId, setTender] = useState<string>()
  const [siteId, setSite] = useState<string>()
  const [otherId, setOther] = useState<string>()
  const [flow_gpm, setFlow] = useState<number>()
  const { spec, bundle, conditions } = session.now.world
  const free = unitChoices(bundle, 'tender', names)
  const isAmiss = (right: Change) => !isInOrder(session.now.world, right)
  const places = {
    fill: spec.fills.filter(({ id }) => isAmiss(rightOf('fill', id))), leak: spec.dumps.filter(({ id }) => isAmiss(rightOf('leak', id))), lay: (spec.feeds ?? []).filter(({ id }) => isAmiss(rightOf('lay', id))), road: conditions.closed,
  }
  const change = changeOf({ kind, tenderId, siteId, otherId, flow_gpm })
  const task = bundle.plan.tenders.find((one) => one.tenderId === tenderId)

  const act = async () => {
    if (kind === 'call') {
      const item = { id: `called-${tenderId}-${Math.floor(session.clock_s)}`.slice(0, 64), tenderId: tenderId ?? '', ...(siteId && { fillSiteId: siteId }), ...(otherId && { dumpSiteId: otherId }) }
      if (await decidePlan([{ kind: 'addItem', collection: 'tenders', item }], by)) done()
    } else if (kind === 'send' && task && !isDriven(session, { tenderId: task.tenderId, siteId, otherId })) {
      // Nobody drives there yet: its ways are found first.
      const sites = { ...(siteId && { fillSiteId: siteId }), ...(otherId && { dumpSiteId: otherId }) }
      if (await decidePlan([{ kind: 'setFields', collection: 'tenders', id: task.id, set: sites }], by)) done()
    } else if (change && decide(change, by)) done()
  }
  if (kind === 'call' && free.length === 0) return <p>{say('exercise.decide.call.none')}</p>
  if ((kind === 'fill' || kind === 'leak' || kind === 'lay') && places[kind].length === 0) return <p>{say(`exercise.decide.in-order.${kind}`)}</p>
  if (kind === 'road' && conditions.closed.length === 0) return <p>{say('exercise.decide.road.none')}</p>
  const hasSites = kind === 'send' || (kind === 'call' && spec.fills.length + spec.dumps.length > 2)
  return (
    <>
      {(kind === 'send' || kind === 'release' || kind === 'call') && <ChoiceField label={say('exercise.decide.tender')} value={tenderId} choices={kind === 'call' ? free : choicesOf(spec.tenders, names)} onCommit={setTender} />}
      {hasSites && <ChoiceField label={say('exercise.decide.to-fill')} none={say(kind === 'send' ? 'exercise.decide.same' : 'exercise.decide.first')} value={siteId} choices={choicesOf(spec.fills, names)} onCommit={setSite} />}
      {hasSites && <ChoiceField label={say('exercise.decide.to-dump')} none={say(kind === 'send' ? 'exercise.decide.same' : 'exercise.decide.first')} value={otherId} choices={choicesOf(spec.dumps, names)} onCommit={setOther} />}
      {(kind === 'fill' || kind === 'leak' || kind === 'lay' || kind === 'road') && <ChoiceField label={say('exercise.decide.site')} value={siteId} choices={kind === 'road' ? conditions.closed.map(({ id }, k) => ({ value: id, label: names(id) ?? say('exercise.road.number', { number: k + 1 }) })) : choicesOf(places[kind], names)} onCommit={setSite} />}
      {kind === 'demand' && <QuantityField label={say('exercise.decide.flow')} unit="gpm" value={flow_gpm} hasMark={false} min={0} max={20_000} onCommit={({ value }) => { setFlow(value) }} />}
      <DoButton missing={missingOf({ kind, tenderId, siteId, otherId, flow_gpm })} isOff={isOff} onDo={() => { void act() }} />
    </>
  )
}

/** Whether somebody of the plan drives between those sites. */
function isDriven({ now: { world: { spec } } }: DecisionForm['session'], { tenderId, siteId, otherId }: { tenderId: string; siteId: string | undefined; otherId: string | undefined }): boolean {
  return findWay(spec, spec.tenders.find(({ id }) => id === tenderId), { fillSiteId: siteId, dumpSiteId: otherId }) !== undefined
}

type Chosen = { kind: WordKind; tenderId: string | undefined; siteId: string | undefined; otherId: string | undefined; flow_gpm: number | undefined }

/** Names of the fields without which there is nothing to do. */
function missingOf({ kind, tenderId, siteId, otherId, flow_gpm }: Chosen): string[] {
  switch (kind) {
    case 'send':
    case 'release':
    case 'call':
      return [
        ...(tenderId === undefined ? [say('exercise.decide.tender')] : []),
        ...(kind === 'send' && (siteId ?? otherId) === undefined ? [say('exercise.decide.either', { one: say('exercise.decide.to-fill'), other: say('exercise.decide.to-dump') })] : []),
      ]
    case 'demand':
      return flow_gpm === undefined ? [say('exercise.decide.flow')] : []
    case 'fill':
    case 'leak':
    case 'lay':
    case 'road':
      return siteId === undefined ? [say('exercise.decide.site')] : []
  }
}

/** What sets a site or a lay right. */
function rightOf(kind: 'fill' | 'leak' | 'lay', siteId: string): Change {
  switch (kind) {
    case 'fill':
      return { kind: 'fillRate', fillSiteId: siteId, rateShare: 1 }
    case 'leak':
      return { kind: 'tankLeak', dumpSiteId: siteId, leak_gpm: 0 }
    case 'lay':
      return { kind: 'layRate', layId: siteId, rateShare: 1 }
  }
}

function changeOf({ kind, tenderId, siteId, otherId, flow_gpm }: Chosen): Change | undefined {
  switch (kind) {
    case 'send':
      return tenderId !== undefined && (siteId ?? otherId) !== undefined ? { kind: 'sendTender', tenderId, ...(siteId !== undefined && { fillSiteId: siteId }), ...(otherId !== undefined && { dumpSiteId: otherId }) } : undefined
    case 'release':
      return tenderId !== undefined ? { kind: 'tenderOut', tenderId } : undefined
    case 'demand':
      return flow_gpm !== undefined ? { kind: 'demand', flow_gpm } : undefined
    case 'fill':
    case 'leak':
    case 'lay':
      return siteId === undefined ? undefined : rightOf(kind, siteId)
    case 'road':
      return siteId !== undefined ? { kind: 'roadOpened', roadId: siteId } : undefined
    case 'call':
      return undefined
  }
}
