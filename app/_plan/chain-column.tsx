'use client'

import { useEffect, useState } from 'react'
import type { Issue } from '@/lib/issue'
import { FIRE_GROUND, type LegUse } from '@/lib/supply'
import { partOfLink } from '../_charts/supply-strip'
import { SiteSymbol } from '../_look/site-symbol'
import type { MapSite } from '../_map'
import { formatAsked, formatGiven, formatQuantity, isAlarm, issueLines, say } from '../_text'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { IssueList } from '../_ui/issue-list'
import { ObjectList } from '../_ui/object-list'
import { useUnitSystem } from '../_ui/unit-system-context'
import { Figures } from './answer-bar'
import { BeingWorkedOut } from './being-worked-out'
import { DumpCard, FillCard, FireCard, loadCards, RoadCard, TendersCard } from './cards'
import { FirstAnswer } from './first-answer'
import { liftWords } from './lift-words'
import { OwnSteps } from './own-steps'
import { focusPart, partId } from './part-focus'
import type { Placed } from './place-edit'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'
import { roadSummary } from './road-summary'
import type { PartName } from '../_links/part-href'

export type ChainColumnProps = {
  part: PartName | undefined
  onPart: (part: PartName | undefined) => void
  placing: Placed | undefined
  /** What is placed is one of those that were missing, one after the other. */
  isGuided: boolean
  onPlacing: (kind: Placed | undefined) => void
  /** Begins placing all that is missing on the map, one after the other. */
  onGuide: (kind: Placed | undefined) => void
  viaOf: LegUse | undefined
  onVia: (use: LegUse | undefined) => void
  sites: readonly MapSite[]
  issues: readonly Issue[]
  onLook: (id: string) => void
}

/** The chain in its order, each part a card that opens in place: fill, road, tenders, dump, fire ground. */
export function ChainColumn({ part, onPart, placing, isGuided, onPlacing, onGuide, viaOf, onVia, sites, issues, onLook }: ChainColumnProps) {
  const { plan, district, result, isWorking, selectedId, select, names } = usePlanBoard()
  const [system] = useUnitSystem()
  const [isListed, setListed] = useState(false)
  // They are at hand when a card opens.
  useEffect(() => { void loadCards() }, [])
  const limit = result?.limitingLink
  const edge = (name: PartName, ids: readonly string[]) => {
    const blocking = issues.filter(({ severity, subjectIds }) => severity === 'block' && subjectIds.some((id) => ids.includes(id)))
    if (blocking.some(isAlarm)) return { edge: 'danger' as const }
    return blocking.length > 0 ? { edge: 'amber' as const } : limit && (partOfLink[limit.kind] === name || (name === 'fill' && partOfLink[limit.kind] === 'source')) ? { edge: 'amber' as const } : {}
  }
  /** The card of a part; that of the fill sites answers for their source too. @param ids sites whose trouble it shows at its edge */
  const cardOf = (name: PartName, ids: readonly string[] = []) => ({
    id: partId(name), level: 2 as const, isOpen: part === name || (name === 'fill' && part === 'source'), onToggle: (isOpen: boolean) => { onPart(isOpen ? name : undefined) }, ...edge(name, ids),
  })
  // How to stop stands on the map alone; pressed again this stops too.
  const own = isGuided ? undefined : placing
  const place = (kind: Placed, look: 'primary' | 'plain' = 'plain') => (
    <Button look={own === kind ? 'primary' : look} icon="pick" size="s" aria-pressed={own === kind} label={say(`plan.place.${kind}`)} onClick={() => { onPlacing(own === kind ? undefined : kind) }} />
  )
  const hasFire = sites.some(({ id }) => id === FIRE_GROUND)
  return (
    <div className={styles.stack} aria-busy={isWorking}>
      <FirstAnswer placing={isGuided ? placing : undefined} onGuide={onGuide} onFire={() => { onPart('fireGround'); focusPart('fireGround', 'input[inputmode]') }} />
      <OwnSteps onPart={onPart} />
      <Card
        {...cardOf('fill', plan.fillSites.map(({ id }) => id))} title={say('plan.card.fill')} symbol={<SiteSymbol kind="fillSite" size={22} />}
        summary={plan.fillSites.length === 0 ? say('plan.card.none') : plan.fillSites.map(({ id, name }) => {
          const site = result?.sites.find((one) => one.id === id)
          return site?.kind === 'fillSite' && site.lift_ft !== null ? `${name}: ${say('plan.summary.fill', { rate: formatGiven(site.bayRate_gpm[0], system), lift: liftWords(site, system) })}` : isWorking ? `${name}: ${say('plan.working')}` : name
        }).join(' · ')}
      >
        <div className={styles.stack}>
          {plan.fillSites.map((site) => plan.fillSites.length === 1
            ? <FillCard key={site.id} site={site} />
            : <Card key={site.id} level={3} title={site.name} startsOpen={site.id === selectedId}><FillCard site={site} /></Card>)}
          {place('fillSite', plan.fillSites.length === 0 ? 'primary' : 'plain')}
        </div>
      </Card>
      {plan.fillSites.length === 0 && part !== 'fill' && place('fillSite')}
      <Card
        {...cardOf('road')} title={say('plan.card.road')}
        summary={isWorking ? say('plan.working') : (result && roadSummary(result, plan.fillSites.map(({ id }) => id), system)) ?? say(plan.fillSites.length === 0 || plan.dumpSites.length === 0 ? 'plan.card.none' : plan.tenders.length === 0 ? 'plan.way.no-tender' : 'plan.way.none')}
      >
        <RoadCard onVia={(use) => { onVia(viaOf?.fromId === use.fromId && viaOf.toId === use.toId ? undefined : use) }} viaOf={viaOf} />
      </Card>
      <Card
        {...cardOf('tenders')} title={say('plan.card.tenders')}
        summary={say('plan.summary.tenders', { count: plan.tenders.length })}
      >
        <TendersCard />
      </Card>
      <Card
        {...cardOf('dump', plan.dumpSites.map(({ id }) => id))} title={say('plan.card.dump')} symbol={<SiteSymbol kind="dumpSite" size={22} />}
        summary={plan.dumpSites.length === 0 ? say('plan.card.none') : plan.dumpSites.map(({ id, name, positionCount = 1 }) => {
          const site = result?.sites.find((one) => one.id === id)
          return site?.kind === 'dumpSite' ? `${name}: ${say('plan.summary.dump', { capacity: formatQuantity(site.capacity_gal, 'gal', system), positions: positionCount })}` : isWorking ? `${name}: ${say('plan.working')}` : name
        }).join(' · ')}
      >
        <div className={styles.stack}>
          {plan.dumpSites.map((site) => plan.dumpSites.length === 1
            ? <DumpCard key={site.id} site={site} />
            : <Card key={site.id} level={3} title={site.name} startsOpen={site.id === selectedId}><DumpCard site={site} /></Card>)}
          {place('dumpSite', plan.dumpSites.length === 0 ? 'primary' : 'plain')}
        </div>
      </Card>
      {plan.dumpSites.length === 0 && part !== 'dump' && place('dumpSite')}
      <Card
        {...cardOf('fireGround')} title={say('plan.card.fireGround')} symbol={<SiteSymbol kind="fireGround" size={22} />}
        summary={[hasFire ? (names(FIRE_GROUND) ?? '') : say('plan.card.none'), result?.needed_gpm ? say('plan.summary.fire', { flow: formatAsked(result.needed_gpm, system) }) : say(isWorking ? 'plan.working' : 'plan.summary.fire-none')].join(' · ')}
      >
        <div className={styles.stack}>
          <FireCard />
          {place('fireGround', hasFire ? 'plain' : 'primary')}
        </div>
      </Card>
      {!hasFire && part !== 'fireGround' && place('fireGround')}
      {district.stations.length === 0 && place('station')}
      <Card level={2} onPaper="open" title={say('plan.issues')} summary={isWorking ? say('plan.working') : say('plan.see-issues', { count: issueLines(issues, names, system).length })} {...(issues.some(isAlarm) && { edge: 'danger' as const })} {...(issues.some(({ severity }) => severity === 'block') && { startsOpen: true })}>
        {isWorking && issues.length === 0 ? <BeingWorkedOut /> : <IssueList issues={issues} names={names} onGo={select} label={say('plan.issues')} />}
      </Card>
      <Card level={2} onPaper="open" title={say('plan.figures')}><Figures /></Card>
      <Card level={2} onPaper="never" title={say('plan.objects')} summary={say('plan.objects.show')} isOpen={isListed} onToggle={setListed}>
        {isListed && <ObjectList
          label={say('plan.objects')} selectedId={selectedId}
          items={sites.map(({ id, kind, name, letter, note, isMarked }) => ({ id, kind, name, ...(letter !== undefined && { letter }), ...(note !== undefined && (isMarked ? { attention: note } : { detail: note })) }))}
          onSelect={(id) => { select(id); onLook(id) }}
        />}
      </Card>
    </div>
  )
}
