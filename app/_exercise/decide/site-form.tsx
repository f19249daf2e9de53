'use client'

import { useState } from 'react'
import type { Point } from '@/lib/geo'
import { getClient } from '../../_client'
import { formatPoint, say } from '../../_text'
import '../../_text/areas/exercise'
import { Button } from '../../_ui/button'
import { ChoiceField } from '../../_ui/choice-field'
import { CountField } from '../../_ui/count-field'
import { DoButton } from './do-button'
import { CheckList, choicesOf, PumperField } from './fields'
import type { DecisionForm } from './form'
import { carryEdits, dumpSiteEdits, fillSiteEdits, placesEdits } from './plan-edits'
import { replaceSite } from '@/lib/exercise'

export const siteKinds = ['places', 'fillSite', 'dumpSite', 'pumper', 'carry'] as const
export type SiteDecision = (typeof siteKinds)[number]

/** Decisions about the sites themselves: bays, a site more or elsewhere, another pumper, which of them feeds the fire. */
export function SiteForm({ kind, session, names, by, isOff, placing, decidePlan, done }: DecisionForm & { kind: SiteDecision }) {
  const { bundle } = session.now.world
  const { plan, district } = bundle
  const [siteId, setSite] = useState<string>()
  const [placeId, setPlace] = useState<string>()
  const [point, setPoint] = useState<Point>()
  const [pumperId, setPumper] = useState<string>()
  const [ids, setIds] = useState<readonly string[]>([])
  const [tankIds, setTanks] = useState<readonly string[]>([])
  const [count, setCount] = useState<number>()
  const sites = kind === 'fillSite' ? plan.fillSites : kind === 'dumpSite' || kind === 'carry' ? plan.dumpSites : [...plan.fillSites, ...plan.dumpSites]
  const site = sites.find(({ id }) => id === siteId)
  const placesNow = site && ('bayCount' in site ? site.bayCount : 'positionCount' in site ? site.positionCount : undefined)
  const draftSites = district.draftSites.filter(({ id }) => !plan.fillSites.some(({ draftSiteId }) => draftSiteId === id))
  const place = draftSites.find(({ id }) => id === placeId)
  const standing = new Set(plan.dumpSites.flatMap(({ portableTankIds = [] }) => portableTankIds as string[]))
  const tanks = district.equipment.filter((item) => item.kind === 'portableTank' && !standing.has(item.id))
  const newId = () => getClient().newId()

  const edits = () => {
    switch (kind) {
      case 'places': return siteId !== undefined && count !== undefined && count !== (placesNow ?? 1) ? placesEdits(bundle, siteId, count) : []
      case 'fillSite': return place && (siteId !== undefined || (pumperId !== undefined && ids.length > 0)) ? fillSiteEdits(bundle, place, siteId, { newId: newId(), pumperId, tenderIds: ids }) : []
      case 'dumpSite': return point && (siteId !== undefined || (pumperId !== undefined && tankIds.length > 0)) ? dumpSiteEdits(bundle, point, say('exercise.dump-site.name', { number: plan.dumpSites.length + 1 }), siteId, { newId: newId(), pumperId, tenderIds: ids }, tankIds) : []
      case 'pumper': return siteId !== undefined && pumperId !== undefined ? replaceSite(bundle, siteId, { pumperId }, newId()) : []
      case 'carry': return ids.length > 0 ? carryEdits(bundle, ids) : []
    }
  }
  const isFillSite = plan.fillSites.some(({ id }) => id === siteId)
  const isNew = (kind === 'fillSite' || kind === 'dumpSite') && siteId === undefined
  const bays = say(isFillSite ? 'exercise.decide.bays' : 'exercise.decide.positions')
  const needs: readonly (readonly [isMissing: boolean, field: string])[] = [
    [(kind === 'places' || kind === 'pumper') && siteId === undefined, say('exercise.decide.site')],
    [kind === 'places' && site !== undefined && count === undefined, bays],
    [kind === 'fillSite' && !place, say('exercise.decide.draft-site')],
    [kind === 'dumpSite' && !point, say('exercise.decide.place.field')],
    [(isNew || kind === 'pumper') && pumperId === undefined, say('exercise.decide.which-pumper')],
    [kind === 'dumpSite' && isNew && tankIds.length === 0, say('exercise.decide.tanks')],
    [kind === 'fillSite' && isNew && ids.length === 0, say('exercise.decide.go-there')],
    [kind === 'carry' && ids.length === 0, say('exercise.decide.carry.from')],
  ]
  const missing = needs.flatMap(([isMissing, field]) => (isMissing ? [field] : []))
  const act = async () => { if (await decidePlan(edits(), by)) done() }
  return (
    <>
      {(kind === 'places' || kind === 'pumper') && <ChoiceField label={say('exercise.decide.site')} value={siteId} choices={choicesOf(sites, names)} onCommit={(id) => { setSite(id); setCount(undefined) }} />}
      {(kind === 'fillSite' || kind === 'dumpSite') && <ChoiceField label={say('exercise.decide.instead')} none={say('exercise.decide.one-more')} value={siteId} choices={choicesOf(sites, names)} onCommit={setSite} />}
      {kind === 'places' && site && <CountField key={site.id} label={bays} hint={say('exercise.decide.places.now', { count: placesNow ?? 1 })} value={count} min={1} max={12} onCommit={setCount} />}
      {kind === 'fillSite' && <ChoiceField label={say('exercise.decide.draft-site')} value={placeId} choices={choicesOf(draftSites, names)} onCommit={setPlace} />}
      {kind === 'dumpSite' && (
        <div>
          <Button size="s" icon="pick" label={say(point ? 'exercise.decide.place.again' : 'exercise.decide.place')} disabled={!placing} onClick={() => { void placing?.ask('dumpSite').then((put) => { if (put) setPoint(put) }) }} />
          {point && <p role="status">{say('exercise.decide.place.at', { point: formatPoint(point) })}</p>}
        </div>
      )}
      {(kind === 'pumper' || kind === 'fillSite' || kind === 'dumpSite') && <PumperField bundle={bundle} names={names} value={pumperId} none={say(isNew || kind === 'pumper' ? 'kit.choose' : 'exercise.decide.same')} onCommit={setPumper} />}
      {kind === 'dumpSite' && isNew && <CheckList legend={say('exercise.decide.tanks')} choices={choicesOf(tanks, names)} value={tankIds} onCommit={setTanks} />}
      {isNew && <CheckList legend={say('exercise.decide.go-there')} choices={choicesOf(session.now.world.spec.tenders, names)} value={ids} onCommit={setIds} />}
      {kind === 'carry' && <CheckList legend={say('exercise.decide.carry.from')} choices={choicesOf(plan.dumpSites, names)} value={ids} onCommit={setIds} />}
      {kind !== 'places' && kind !== 'carry' && <p>{say(siteId !== undefined && kind !== 'pumper' ? 'exercise.decide.moved.note' : 'exercise.decide.sent.note')}</p>}
      <DoButton missing={missing} isUnchanged={edits().length === 0} isOff={isOff} onDo={() => { void act() }} />
    </>
  )
}
