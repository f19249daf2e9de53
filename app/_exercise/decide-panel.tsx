'use client'

import { useState } from 'react'
import type { Change, TenderTask } from '@/lib/plan'
import type { Session } from '@/lib/exercise'
import { getClient } from '../_client'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { ChoiceField, type Choice } from '../_ui/choice-field'
import { QuantityField } from '../_ui/quantity-field'
import { TextField } from '../_ui/text-field'
import { getPlanner } from '../_worker'
import styles from './exercise.module.css'
import type { ExerciseDesk } from './use-exercise'

const kinds = ['send', 'call', 'release', 'demand', 'fill', 'leak', 'lay'] as const
type Kind = (typeof kinds)[number]

/** What the crews decide, entered as they decide it. */
export function DecidePanel({ desk }: { desk: ExerciseDesk }) {
  const { session, names } = desk
  const [by, setBy] = useState<string>()
  const [kind, setKind] = useState<Kind>('send')
  const [tenderId, setTender] = useState<string>()
  const [siteId, setSite] = useState<string>()
  const [otherId, setOther] = useState<string>()
  const [flow_gpm, setFlow] = useState<number>()
  const [said, setSaid] = useState<string>()
  if (!session) return null
  const { spec, bundle } = session.now.world
  const named = (items: readonly { readonly id: string }[]): Choice<string>[] => items.map(({ id }) => ({ value: id, label: names(id) ?? id }))
  const tenders = named(spec.tenders)
  const free = named(bundle.district.apparatus.filter(({ id, kind: unit }) => unit === 'tender' && !bundle.plan.tenders.some((task) => task.tenderId === id)))
  const sites = { send: named(spec.fills), call: [], release: [], demand: [], fill: named(spec.fills), leak: named(spec.dumps), lay: named(spec.feeds ?? []) }[kind]

  const change = changeOf({ kind, tenderId, siteId, otherId, flow_gpm })
  const clear = () => { setTender(undefined); setSite(undefined); setOther(undefined); setFlow(undefined) }
  const act = async () => {
    setSaid(undefined)
    if (kind === 'call' && tenderId !== undefined) {
      setSaid(say('exercise.decide.call.finding'))
      const called = await callTender(session, tenderId)
      setSaid(called ? undefined : say('exercise.decide.call.no-way'))
      if (called && desk.decide(called, by ?? '')) clear()
    } else if (change && desk.decide(change, by ?? '')) clear()
  }
  return (
    <Card title={say('exercise.decisions')} level={2} startsOpen>
      <div className={styles.form}>
        <TextField label={say('exercise.decisions.by')} hint={say('exercise.decisions.by.hint')} value={by} onCommit={setBy} />
        <ChoiceField label={say('exercise.decide.what')} value={kind} choices={kinds.filter((one) => one !== 'lay' || spec.feeds).map((value) => ({ value, label: say(`exercise.decide.${value}`) }))} onCommit={(value) => { setKind(value ?? 'send'); clear() }} />
        {kind === 'call' && free.length === 0 && <p>{say('exercise.decide.call.none')}</p>}
        {(kind === 'send' || kind === 'release' || (kind === 'call' && free.length > 0)) && <ChoiceField label={say('exercise.decide.tender')} value={tenderId} choices={kind === 'call' ? free : tenders} onCommit={setTender} />}
        {kind === 'send' && <ChoiceField label={say('exercise.decide.to-fill')} none={say('exercise.decide.same')} value={siteId} choices={sites} onCommit={setSite} />}
        {kind === 'send' && <ChoiceField label={say('exercise.decide.to-dump')} none={say('exercise.decide.same')} value={otherId} choices={named(spec.dumps)} onCommit={setOther} />}
        {(kind === 'fill' || kind === 'leak' || kind === 'lay') && <ChoiceField label={say('exercise.decide.site')} value={siteId} choices={sites} onCommit={setSite} />}
        {kind === 'demand' && <QuantityField label={say('exercise.decide.flow')} unit="gpm" value={flow_gpm} hasMark={false} min={0} max={20_000} onCommit={({ value }) => { setFlow(value) }} />}
        <Button look="primary" label={say('exercise.decide.do')} disabled={desk.isEnded || (kind === 'call' ? tenderId === undefined : !change)} onClick={() => { void act() }} />
        {said && <p role="status">{said}</p>}
      </div>
    </Card>
  )
}

type Chosen = { kind: Kind; tenderId: string | undefined; siteId: string | undefined; otherId: string | undefined; flow_gpm: number | undefined }

function changeOf({ kind, tenderId, siteId, otherId, flow_gpm }: Chosen): Change | undefined {
  switch (kind) {
    case 'send':
      return tenderId !== undefined && (siteId ?? otherId) !== undefined ? { kind: 'sendTender', tenderId, ...(siteId !== undefined && { fillSiteId: siteId }), ...(otherId !== undefined && { dumpSiteId: otherId }) } : undefined
    case 'release':
      return tenderId !== undefined ? { kind: 'tenderOut', tenderId } : undefined
    case 'demand':
      return flow_gpm !== undefined ? { kind: 'demand', flow_gpm } : undefined
    case 'fill':
      return siteId !== undefined ? { kind: 'fillRate', fillSiteId: siteId, rateShare: 1 } : undefined
    case 'leak':
      return siteId !== undefined ? { kind: 'tankLeak', dumpSiteId: siteId, leak_gpm: 0 } : undefined
    case 'lay':
      return siteId !== undefined ? { kind: 'layRate', layId: siteId, rateShare: 1 } : undefined
    case 'call':
      return undefined
  }
}

/** One more tender of the district, with the ways it drives; undefined where none is found. */
async function callTender(session: Session, tenderId: string): Promise<Change | undefined> {
  const { bundle } = session.now.world
  const task: TenderTask = { id: getClient().newId(), tenderId }
  const edits = [{ doc: 'plan' as const, body: { kind: 'addItem' as const, collection: 'tenders', item: task } }]
  const known = new Set(bundle.legs.map(({ key }) => key))
  const changed = { ...bundle, plan: { ...bundle.plan, tenders: [...bundle.plan.tenders, task] } }
  return new Promise((resolve) => {
    getPlanner().answer(changed, ({ legs }) => { resolve({ kind: 'plan', edits, legs: legs.filter(({ key }) => !known.has(key)) }) }).catch(() => { resolve(undefined) })
  })
}
