'use client'

import dynamic from 'next/dynamic'
import { useEffect, useMemo, useRef, useState } from 'react'
import { findBounds } from '@/lib/geo'
import { roles, shortNames, type Role } from '@/lib/plan'
import { readSession, seenFrom, seesMap, sessionChart, tendersOf, wholeViewOf } from '@/lib/exercise'
import { StringChart } from '../_charts/string-chart'
import { useDistrict } from '../_client'
import { BringBack } from '../_frame/bring-back'
import { Shell } from '../_frame/shell'
import { LiveMark } from '../_live/live-mark'
import { DistrictMap, useDrawnDistrict } from '../_map'
import { say } from '../_text'
import '../_text/areas/exercise'
import { ButtonLink } from '../_ui/button-link'
import { Card } from '../_ui/card'
import { Caution } from '../_ui/caution'
import { ChoiceField } from '../_ui/choice-field'
import { EmptyState } from '../_ui/empty-state'
import { UndoButtons } from '../_frame/undo-buttons'
import { exerciseHref } from '../_links/exercise-href'
import { useAddress } from '../_ui/use-address'
import { useUnitSystem } from '../_ui/unit-system-context'
import { ClockBar } from './clock-bar'
import { DecidePanel } from './decide-panel'
import { DrillOutcome } from './drill-outcome'
import styles from './exercise.module.css'
import { FactLog } from './fact-log'
import { LiveStrip } from './live-strip'
import { withNotes } from './site-notes'
import { TenderTable } from './tender-table'
import { TroublesPanel } from './troubles-panel'
import { useExercise } from './use-exercise'
import { tendersOnMap, useExercisePlaces } from './use-exercise-map'
import { usePlacing } from './use-placing'
import { WaterFigures } from './water-figures'

/** Only who leads lets others in. */
const SeatsPanel = dynamic(() => import('./seats-panel').then((made) => made.SeatsPanel), { ssr: false })

/** An exercise while it runs, as one seat sees it. */
export function ExerciseScreen({ districtId, exerciseId }: { districtId: string; exerciseId: string }) {
  const { seat: asked } = useAddress('seat')
  const [role, setRole] = useState<Role>(() => roles.find((one) => one === asked) ?? 'facilitator')
  const [siteId, setSite] = useState<string>()
  const leads = role === 'facilitator'
  const desk = useExercise(exerciseId, leads)
  const [system] = useUnitSystem()
  const { exercise, session, status, names, clock_s } = desk
  const district = useDistrict(districtId).doc
  const drawn = useDrawnDistrict(exercise?.bundle.district.map)
  const record = useMemo(() => session && readSession(session), [session])
  const view = useMemo(() => session && wholeViewOf(session, record), [session, record])
  const { sites, routes } = useExercisePlaces(session?.now.world, names)
  const all = useMemo(() => (session && view ? [...(leads ? withNotes(sites, view, system) : sites), ...tendersOnMap(session, view, names)] : sites), [sites, session, view, names, leads, system])
  const placing = usePlacing()
  const map = useRef<HTMLElement>(null)
  // Where the form is far from the map, as on a phone, the map comes to whoever is asked to show a place on it.
  useEffect(() => { if (placing.pending) map.current?.scrollIntoView({ block: 'center' }) }, [placing.pending])
  const home = useMemo(() => findBounds(sites.filter(({ kind }) => kind !== 'station').map(({ point }) => point)), [sites])
  useSpaceKey(leads && !desk.isEnded, () => { desk.run(!(exercise?.clock?.isRunning ?? false)) })

  const shell = { ...(district && { district: { id: districtId, name: district.name } }), screen: 'exercise' as const, ...(leads && { actions: <UndoButtons /> }) }
  if (exercise && status === 'deleted') return <Shell {...shell}><EmptyState title={say('exercise.deleted', { name: exercise.name })}><BringBack docId={exerciseId} /><ButtonLink href={exerciseHref(districtId)} label={say('exercise.title')} /></EmptyState></Shell>
  if (!exercise) {
    return (
      <Shell {...shell}>
        <EmptyState title={say(status === 'loading' ? 'exercise.loading' : status === 'unreachable' ? 'exercise.unreachable' : 'exercise.missing')}>
          {status !== 'loading' && <ButtonLink href={exerciseHref(districtId)} label={say('exercise.title')} />}
        </EmptyState>
      </Shell>
    )
  }
  const { plan } = exercise.bundle
  const ownSites = role === 'dumpSite' ? plan.dumpSites : role === 'fillSite' ? plan.fillSites : []
  const here = ownSites.find(({ id }) => id === siteId) ?? ownSites[0]
  const seat = view && seenFrom(view, role, here?.id)
  return (
    <Shell {...shell}>
      <div className={styles.screen}>
        <header className={styles.head}>
          <h1 className={styles.title}>{exercise.name}</h1>
          <ChoiceField label={say('exercise.seat')} isWide={false} value={role} choices={roles.map((value) => ({ value, label: say(`exercise.seat.${value}`) }))} onCommit={(value) => { setRole(value ?? 'facilitator') }} />
          <LiveMark state={desk.live.state} />
          {ownSites.length > 1 && <ChoiceField label={say('exercise.seat.at')} isWide={false} value={here?.id as string | undefined} choices={ownSites.map(({ id, name }) => ({ value: id as string, label: name }))} onCommit={setSite} />}
        </header>
        <ClockBar desk={desk} districtId={districtId} leads={leads} />
        {leads && <DrillOutcome desk={desk} />}
        {!session && <EmptyState title={say('exercise.broken')} />}
        {session && view && seat && record && (
          <div className={styles.columns}>
            <div className={styles.main}>
              <WaterFigures seat={seat} names={names} system={system} />
              {seesMap(role) && (
                <section ref={map} className={styles.map} aria-label={say('exercise.map')}>
                  <DistrictMap {...(drawn.district && { district: drawn.district })} isLoading={drawn.isLoading} sites={all} routes={routes}
                    {...(placing.pending && { pending: placing.pending, onPlace: placing.put, onStopPlacing: () => { placing.put() } })} {...(home && { home })} {...(exercise.bundle.district.map && { attribution: [exercise.bundle.district.map.attribution] })} />
                </section>
              )}
              {leads && clock_s > 60 && <LiveStrip session={session} asked_gpm={view.asked_gpm} names={names} />}
              {seat.tenders.length > 0 && <TenderTable tenders={seat.tenders} names={names} system={system} />}
              {leads && clock_s > 60 && <Card title={say('exercise.chart')} level={2} startsOpen><StringChart chart={sessionChart(session, record, view.tenders)} names={names} shared_s={Math.max(1800, clock_s)} marks={shortNames(tendersOf(session.now.world.bundle))} /></Card>}
            </div>
            <div className={styles.side}>
              <div className={styles.first}>
                <DecidePanel desk={desk} placing={seesMap(role) ? placing : undefined} />
                {leads && <TroublesPanel desk={desk} />}
              </div>
              {leads && <SeatsPanel exercise={exercise} present={desk.live.present} onLeave={() => { if (!desk.isEnded && exercise.clock?.isRunning) desk.run(false) }} />}
              <FactLog desk={desk} role={role} />
              <Caution title={say('caution.title')} kinds={['planning-aid']} />
            </div>
          </div>
        )}
      </div>
    </Shell>
  )
}

/** Space starts and stops the clock, where no field or button has the keys. */
function useSpaceKey(isOn: boolean, act: () => void): void {
  useEffect(() => {
    if (!isOn) return
    const press = (event: KeyboardEvent) => {
      const on = event.target as HTMLElement | null
      if (event.key !== ' ' || event.repeat || on?.closest('input, select, textarea, button, a, summary, [tabindex]:not(main)')) return
      event.preventDefault()
      act()
    }
    addEventListener('keydown', press)
    return () => { removeEventListener('keydown', press) }
  }, [isOn, act])
}
