'use client'

import dynamic from 'next/dynamic'
import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { findBounds, type Point } from '@/lib/geo'
import { FIRE_GROUND, findLegNote, type LegUse, type SupplyChart } from '@/lib/supply'
import { SupplyStrip } from '../_charts/supply-strip'
import { getClient } from '../_client'
import { DistrictMap, useDrawnDistrict, type MapHandle } from '../_map'
import { formatAsked, formatGiven, say } from '../_text'
import { Button } from '../_ui/button'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useAddress } from '../_ui/use-address'
import { getPlanner } from '../_worker'
import { AnswerBar } from './answer-bar'
import { firstPlaces, missingNeeds } from './first-needs'
import { PlanBoardProvider, type PlanBoard } from './plan-context'
import { placeEdit, type Placed } from './place-edit'
import { PlanNav } from './plan-nav'
import { PlanNotHere } from './plan-not-here'
import styles from './planner.module.css'
import { PrintHead } from './print-head'
import { BeingWorkedOut, StripSkeleton } from './being-worked-out'
import { Conflicts } from '../_frame/conflicts'
import { Shell } from '../_frame/shell'
import { UndoButtons } from '../_frame/undo-buttons'
import { findPart, type PartName } from '../_links/part-href'
import { ChainColumn } from './chain-column'
import { usePlanDesk } from './use-plan-desk'
import { routesFrom, usePlanRoutes, usePlanSites } from './use-plan-map'

const StringChart = dynamic(() => import('../_charts/string-chart').then((made) => made.StringChart), { ssr: false, loading: BeingWorkedOut })

type FirstPlace = (typeof firstPlaces)[number]

/** The card that opens for what has just been placed. */
const partOfPlaced: Readonly<Record<Placed, PartName | undefined>> = { fillSite: 'fill', dumpSite: 'dump', fireGround: 'fireGround', station: undefined }

/** The planner: the chain on the left, the map beside it, the strip along the bottom. */
export function Planner({ districtId, planId }: { districtId: string; planId: string }) {
  const { part: partName } = useAddress('part')
  const { district, plan, status, answer, names, edit, acts } = usePlanDesk(districtId, planId)
  const [system] = useUnitSystem()
  const [selectedId, setSelectedId] = useState<string>()
  const [part, setPart] = useState(() => findPart(partName))
  const [placing, setPlacing] = useState<Placed>()
  const [isGuided, setGuided] = useState(false)
  const [viaOf, setViaOf] = useState<LegUse>()
  const [isChartOpen, setChartOpen] = useState(false)
  const map = useRef<MapHandle>(null)
  const mapPart = useRef<HTMLElement>(null)
  const drawn = useDrawnDistrict(district?.map)

  const [dragged, setDragged] = useState<typeof answer.result>()
  const result = dragged ?? answer.result
  const isWorking = !result && answer.pending.answer
  const chart = useChart(isChartOpen, answer.result)

  const sites = usePlanSites(district, plan, answer.result, names, selectedId, system)
  const routes = usePlanRoutes(answer, plan, selectedId)

  const home = useMemo(() => {
    const own = sites.filter(({ isGhost, kind }) => !isGhost && kind !== 'station').map(({ point }) => point)
    return own.length > 1 ? findBounds(own) : undefined
  }, [sites])

  const select = useCallback((id: string | undefined) => {
    setSelectedId(id)
    if (id === undefined) return
    if (plan?.fillSites.some((site) => site.id === id)) setPart('fill')
    else if (plan?.dumpSites.some((site) => site.id === id)) setPart('dump')
    else if (id === FIRE_GROUND || district?.hazards.some((hazard) => hazard.id === id)) setPart('fireGround')
    else if (plan?.tenders.some((task) => task.tenderId === id)) setPart('tenders')
  }, [plan, district])

  const board = useMemo<PlanBoard | undefined>(() => district && plan && {
    district, plan, result, isWorking, names, legs: answer.legs, selectedId, select, ...acts,
  }, [district, plan, result, isWorking, names, answer.legs, selectedId, select, acts])

  const place = (point: Point, onSiteId?: string) => {
    if (!district || !plan) return
    if (viaOf) {
      const note = findLegNote({ plan }, viaOf.fromId, viaOf.toId, viaOf.apparatusId)
      const via = [...(note?.via ?? []), point]
      board?.editPlan(note
        ? { kind: 'setFields', collection: 'legNotes', id: note.id, set: { via } }
        : { kind: 'addItem', collection: 'legNotes', item: { id: getClient().newId(), fromId: viaOf.fromId, toId: viaOf.toId, via } }, say('plan.way.add-via'))
      setViaOf(undefined)
      return
    }
    if (!placing) return
    const made = placeEdit(placing, { point, onSiteId }, { district, plan }, () => getClient().newId())
    if (edit([{ docId: districtId, body: made.district }, { docId: planId, body: made.plan }], made.label)) {
      setSelectedId(made.id)
      setPart(partOfPlaced[placing])
    }
    setPlacing(isGuided ? firstPlaces.slice(firstPlaces.indexOf(placing as FirstPlace) + 1).find((next) => missingNeeds(district, plan).includes(next)) : undefined)
  }

  const drag = (id: string, point: Point) => {
    void getPlanner().drag(id, point).then((moved) => {
      if (!moved) return
      const keys = new Set(moved.uses.map((use) => `${use.fromId}>${use.toId}>${use.apparatusId}`))
      const uses = [...answer.uses.filter((use) => !keys.has(`${use.fromId}>${use.toId}>${use.apparatusId}`)), ...moved.uses]
      map.current?.drawRoutes(routesFrom([...answer.legs, ...moved.legs], uses, plan))
      setDragged(moved.result)
    }, () => undefined)
  }
  const move = (id: string, point: Point) => {
    const label = say('plan.moved', { name: names(id) ?? id })
    const collection = plan?.fillSites.some((site) => site.id === id) ? 'fillSites' : 'dumpSites'
    if (id === FIRE_GROUND) edit([{ docId: planId, body: [{ kind: 'setFields', set: { fireGround: point } }] }], label)
    else edit([{ docId: planId, body: [{ kind: 'moveSite', collection, id, point }] }], label)
    setDragged(undefined)
    map.current?.drawRoutes(undefined)
  }

  const stopPlacing = useCallback(() => {
    setPlacing(undefined)
    setViaOf(undefined)
  }, [])
  // On a phone the button is far below the map that is to be tapped.
  const isPicking = placing !== undefined || viaOf !== undefined
  useEffect(() => { if (isPicking) mapPart.current?.scrollIntoView({ block: 'nearest' }) }, [isPicking])
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && (placing || viaOf)) stopPlacing()
    }
    window.addEventListener('keydown', onKey)
    return () => { window.removeEventListener('keydown', onKey) }
  }, [placing, viaOf, stopPlacing])

  if (!board || !district || !plan || status === 'missing' || status === 'deleted') return <PlanNotHere district={district} districtId={districtId} planId={planId} status={status} />
  return (
    <Shell district={{ id: districtId, name: district.name }} screen="plan" layout="work" actions={<UndoButtons />}>
      <PlanBoardProvider board={board}>
        <div className={styles.planner}>
          <PrintHead isPending={isWorking || answer.pending.answer || answer.pending.limitingLink} />
          <div className={styles.answer}>
            <PlanNav districtId={districtId} planId={planId} name={plan.name} page="map" />
            <div className={styles.sentence}><AnswerBar pending={dragged ? { answer: false, limitingLink: true } : answer.pending} /></div>
          </div>
          <Conflicts docIds={[planId, districtId]} names={names} />
          <section className={styles.column} aria-label={say('plan.column')}>
            <ChainColumn part={part} onPart={setPart} placing={placing} isGuided={isGuided} onPlacing={(kind) => { setPlacing(kind); setGuided(false); setViaOf(undefined) }} onGuide={(kind) => { setPlacing(kind); setGuided(true); setViaOf(undefined) }} viaOf={viaOf} onVia={setViaOf} sites={sites} issues={[...(drawn.issue ? [drawn.issue] : []), ...answer.issues, ...(result?.issues ?? [])]} onLook={(id) => { const site = sites.find((one) => one.id === id); if (site) map.current?.centreOn(site.point) }} />
          </section>
          <section ref={mapPart} className={styles.mapPart} aria-label={say('plan.map')}>
            <DistrictMap
              ref={map} sites={sites} routes={routes} {...(home && { home })} start={district.bounds}
              {...(drawn.district && { district: drawn.district })} isLoading={drawn.isLoading}
              {...(district.map && { attribution: [district.map.attribution] })} {...(district.terrain && { terrain: district.terrain })}
              {...((placing ?? viaOf) && { pending: viaOf ? 'roadNote' as const : placing })} {...((viaOf || (isGuided && placing)) && { pendingWords: viaOf ? say('plan.way.picking') : say(`plan.first.tap.${placing as FirstPlace}`) })}
              onPlace={place} onStopPlacing={stopPlacing} onPick={select} onGrab={(id) => { void getPlanner().warm(id) }} onDrag={drag} onMove={move}
              className={styles.map}
            />
          </section>
          <section className={styles.strip} aria-label={say('plan.strip.label')}>
            {isWorking && <StripSkeleton />}
            {result && <SupplyStrip result={result} names={names} chosen={part === 'tenders' || part === undefined ? undefined : part} onChoose={setPart} />}
            <div className={styles.stripFoot}>
              {result && result.chain.length > 0 && (
                <p className={styles.legend}>{say('plan.strip.legend', { needed: result.needed_gpm === null ? 'none' : formatAsked(result.needed_gpm, system), expected: formatGiven(result.sustainable_gpm, system, result.needed_gpm) })}</p>
              )}
              <Button look="quiet" size="s" iconAfter="chevron" aria-expanded={isChartOpen} label={say(isChartOpen ? 'plan.chart.hide' : 'plan.chart.show')} onClick={() => { setChartOpen(!isChartOpen) }} />
            </div>
            {isChartOpen && (chart ? <div className={styles.chartPart}><StringChart chart={chart} names={names} /></div> : isWorking ? <BeingWorkedOut /> : <p className={styles.quiet}>{say('plan.chart.none')}</p>)}
          </section>
        </div>
      </PlanBoardProvider>
    </Shell>
  )
}

/** The chart of the planned run, asked for while it is open, anew for every answer. */
function useChart(isOpen: boolean, result: unknown): SupplyChart | undefined {
  const [chart, setChart] = useState<SupplyChart>()
  useEffect(() => {
    if (!isOpen || !result) return
    let isGone = false
    void getPlanner().chart().then((made) => { if (!isGone) setChart(made) }, () => undefined)
    return () => { isGone = true }
  }, [isOpen, result])
  return isOpen ? chart : undefined
}
