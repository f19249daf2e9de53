'use client'

import { useCallback, useEffect, useEffectEvent, useMemo, useRef, useState } from 'react'
import type { Evidence } from '@/lib/evidence'
import type { Point } from '@/lib/geo'
import { feetFromMetres } from '@/lib/units'
import { collectionOf, findPlaceOf, placesOf, surveyKinds, withoutItem, type SurveyKind } from '@/lib/plan'
import { getClient, useDistrict } from '../_client'
import { useAct } from '../_fields/use-act'
import { BringBack } from '../_frame/bring-back'
import { Conflicts } from '../_frame/conflicts'
import { FirstSteps } from '../_frame/first-steps'
import { Shell } from '../_frame/shell'
import { UndoButtons } from '../_frame/undo-buttons'
import { exchangeHref } from '../_links/exchange-href'
import { DistrictMap, useDrawnDistrict, type MapHandle, type MapSite } from '../_map'
import { formatQuantity, localDay, say, sayIssue, type NameOf } from '../_text'
import '../_text/areas/survey'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Card } from '../_ui/card'
import { ChoiceField } from '../_ui/choice-field'
import { EmptyState } from '../_ui/empty-state'
import { Menu } from '../_ui/menu'
import { SearchBox } from '../_ui/search-box'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useAddress } from '../_ui/use-address'
import { useAfterPaint } from '../_ui/use-after-paint'
import { isNowhere } from './is-nowhere'
import { findPlaces, readyPlaces } from './find-places'
import { ImportPanel } from './import-panel'
import { MapSources, MapWaterCount } from './map-sources'
import { newPlaceEdit } from './new-place'
import { DistrictSettings, ElevationPanel } from './opened-parts'
import { PlaceList } from './place-list'
import { placeSummary } from './place-summary'
import styles from './survey.module.css'
import { nameOfMapWater } from './source-from-map'
import { SurveyProvider, type Placing, type SurveyBoard } from './survey-context'
import { useElevationImport } from './use-elevation-import'
import { useImport } from './use-import'
import { useMapWater } from './use-map-water'
import { WhereItLies } from './where-it-lies'

/** The survey: every place of the district on the map and as a list of cards beside it. */
export function Survey({ districtId }: { districtId: string }) {
  const { item: itemId, open: openAt } = useAddress('item', 'open')
  const view = useDistrict(districtId)
  const district = view.doc
  const [system] = useUnitSystem()
  const afterPaint = useAfterPaint()
  const [selectedId, setSelectedId] = useState(itemId)
  const [markedId, setMarkedId] = useState(itemId)
  const [addressed, setAddressed] = useState(itemId)
  const [arrivedId, setArrivedId] = useState(itemId)
  const [centred, setCentred] = useState<{ id: string }>()
  const [placing, setPlacing] = useState<Placing>()
  const [here, setHere] = useState<{ point: Point; accuracy_m: number }>()
  const [search, setSearch] = useState('')
  const [kind, setKind] = useState<SurveyKind>()
  const [openPanel, setOpenPanel] = useState<'district' | 'check' | 'import' | 'elevation' | undefined>(openAt === 'water' ? 'check' : undefined)
  const [looked, setLooked] = useState<MapSite>()
  const [mapPart, setMapPart] = useState<HTMLElement | null>(null)
  const [map, setMap] = useState<MapHandle | null>(null)
  const drawn = useDrawnDistrict(district?.map)
  const roadImport = useImport(district)
  const elevationImport = useElevationImport(district)
  const mapWater = useMapWater(district?.map?.hash, district?.roads?.hash)

  const itemNames = useMemo(() => new Map(district ? [...placesOf(district).map(({ item }) => [item.id as string, item.name] as const), ...district.apparatus.map(({ id, name }) => [id as string, name] as const)] : []), [district])
  const names: NameOf = useCallback((id) => itemNames.get(id), [itemNames])
  const { edit, remove } = useAct(districtId, names)

  // The card opens at once; the map and the address follow when it is on the screen.
  const open = useCallback((id: string | undefined, { isCentred = false } = {}) => {
    setSelectedId(id)
    setPlacing(undefined)
    setLooked(undefined)
    afterPaint(() => {
      setMarkedId(id)
      setCentred(isCentred && id !== undefined ? { id } : undefined)
      history.replaceState(null, '', id === undefined ? location.pathname : `${location.pathname}?item=${encodeURIComponent(id)}`)
    })
  }, [afterPaint])
  // The same function through every change of the district: else each edit would draw every card of the list anew.
  const select = useCallback((id: string | undefined) => { open(id, { isCentred: true }) }, [open])
  const centreOn = useEffectEvent((id: string) => {
    const place = district && findPlaceOf(district, id)
    if (place) map?.centreOn(place.item.point)
  })
  useEffect(() => { if (centred) centreOn(centred.id) }, [centred])

  const put = useCallback((wanted: Placing, point: Point, { pointEvidence, onSiteId }: { pointEvidence?: Evidence; onSiteId?: string | undefined } = {}) => {
    if (!district) return
    setHere(undefined)
    setPlacing(undefined)
    if (wanted.moveId !== undefined) {
      const place = findPlaceOf(district, wanted.moveId)
      if (place) edit(moveEdit(place.kind, wanted.moveId, point, pointEvidence ?? (place.item.evidence?.point && null)), say('survey.moved', { name: place.item.name }))
      return
    }
    const body = newPlaceEdit({ kind: wanted.kind, point, sourceId: wanted.sourceId ?? district.sources.find(({ id }) => id === onSiteId)?.id, pointEvidence }, district, () => getClient().newId())
    if (edit(body, say('survey.added', { name: String(body.item.name) }))) open(body.item.id)
  }, [district, edit, open])

  const board = useMemo<SurveyBoard | undefined>(() => district && {
    district, names, selectedId, select, placing, edit,
    place: (next) => {
      setPlacing(next)
      setHere(undefined)
      if (next) mapPart?.scrollIntoView({ block: 'nearest' })
    },
    remove: (place) => { remove(withoutItem(collectionOf[place.kind], place.item.id, district), place.item.name); open(undefined) },
  }, [district, names, selectedId, select, placing, edit, remove, open, mapPart])

  const ready = useMemo(() => (district ? readyPlaces(district) : []), [district])
  const found = useMemo(() => findPlaces(ready, search), [ready, search])
  const sites = useMemo<MapSite[]>(() => {
    if (!district) return []
    const isFound = new Set(found)
    return [
      ...ready.filter(({ place }) => place.item.id === markedId || (isFound.has(place) && (kind === undefined || place.kind === kind))).map(({ place }): MapSite => {
        const isChosen = place.item.id === markedId
        const attention = isChosen ? placeSummary(place, district, system).attention : undefined
        return { id: place.item.id, kind: place.kind, point: place.item.point, name: place.item.name, isMovable: true, isChosen, ...(attention && { note: attention }) }
      }),
      ...(looked ? [looked] : []),
    ]
  }, [district, ready, found, kind, markedId, system, looked])

  // Somebody came to another place by a link while the survey was open.
  if (itemId !== addressed) {
    setAddressed(itemId)
    if (itemId !== selectedId) {
      setSelectedId(itemId)
      setMarkedId(itemId)
      setArrivedId(itemId)
    }
  }

  // A place that a link names is brought into view once, when the map can be asked; one chosen here is there already.
  const shownId = useRef<string>(undefined)
  useEffect(() => {
    const place = map && district && arrivedId !== undefined && shownId.current !== arrivedId ? findPlaceOf(district, arrivedId) : undefined
    if (!place) return
    shownId.current = arrivedId
    map?.fitTo([place.item.point])
  }, [map, district, arrivedId])

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => { if (event.key === 'Escape' && placing) setPlacing(undefined) }
    window.addEventListener('keydown', onKey)
    return () => { window.removeEventListener('keydown', onKey) }
  }, [placing])

  const shellDistrict = district && { id: districtId, name: district.name }
  if (view.status === 'missing' || view.status === 'deleted')
    return <Shell screen="survey" title={say('survey.title')}><EmptyState title={say(view.status === 'deleted' ? 'survey.put-away' : 'survey.missing')}>{view.status === 'deleted' && <BringBack docId={districtId} />}<ButtonLink href="/" label={say('shell.home')} /></EmptyState></Shell>
  if (!board || !district)
    return <Shell district={shellDistrict} screen="survey" title={say('survey.title')}><EmptyState title={say(view.status === 'unreachable' ? 'survey.unreachable' : 'survey.loading')} /></Shell>

  const bringIn = (file: File) => { void roadImport.run(file).then((bounds) => { if (bounds) map?.fitTo(bounds) }) }
  const browse = () => { roadImport.close(); setOpenPanel('check') }
  const isImportFirst = !district.roads || roadImport.state.kind !== 'idle'
  const panel = (name: 'district' | 'check' | 'import' | 'elevation') => ({ isOpen: openPanel === name, onToggle: (open: boolean) => { setOpenPanel(open ? name : undefined) } })
  const importPanel = <ImportPanel district={district} roadImport={roadImport} onFile={bringIn} onBrowse={browse} />
  return (
    <Shell district={shellDistrict} screen="survey" layout="work" actions={<UndoButtons />} title={say('survey.title')}>
      <SurveyProvider value={board}>
        <div className={styles.survey}>
          <Conflicts docIds={[districtId]} names={names} />
          <section className={styles.column} aria-label={say('survey.column')}>
            {drawn.issue && <p className={styles.wrong} role="alert">{sayIssue(drawn.issue, names, system)}</p>}
            <FirstSteps district={district} screen="survey" />
            {isImportFirst && <Card level={2} title={say(district.roads ? 'survey.import.title' : 'survey.import.first')} startsOpen>{importPanel}</Card>}
            {isNowhere(district) && <Card level={2} title={say('survey.start.title')} startsOpen><WhereItLies onSay={(body, label) => { edit(body, label) }} /></Card>}
            {district.map && (
              <Card level={2} title={say('survey.check.title')} summary={<MapWaterCount found={mapWater} />} {...panel('check')}>
                {openPanel === 'check' && <MapSources found={mapWater} onLook={(water) => { setLooked({ id: `look-${water.osmId}`, kind: 'source', point: water.point, name: nameOfMapWater(water, system), isGhost: true }); map?.fitTo([water.point]) }} />}
              </Card>
            )}
            {ready.length > 0 && (
              <div className={styles.finder}>
                <SearchBox label={say('survey.search')} search={search} onSearch={setSearch} foundCount={found.length} />
                <ChoiceField label={say('survey.kinds')} none={say('survey.kinds.all')} value={kind} choices={surveyKinds.map((value) => ({ value, label: say(`survey.many.${value}`) }))} onCommit={setKind} />
              </div>
            )}
            {here && !placing && (
              <div className={styles.hint}>
                <p>{say('survey.here', { accuracy: formatQuantity(feetFromMetres(here.accuracy_m), 'ft', system, { digits: 0 }) })}</p>
                <Menu label={say('survey.here.place')} size="s" items={surveyKinds.map((one) => ({ id: one, label: say(`survey.place.${one}`), onSelect: () => { put({ kind: one }, here.point, { pointEvidence: deviceEvidence(here.accuracy_m) }) } }))} />
                <Button size="s" look="quiet" icon="close" label={say('kit.close')} onClick={() => { setHere(undefined) }} />
              </div>
            )}
            <PlaceList found={found} isSearching={search.trim() !== ''} kind={kind} />
            <Card level={2} title={say('survey.district')} summary={district.altitude_ft === undefined ? say('survey.district.default') : formatQuantity(district.altitude_ft, 'ft', system)} {...panel('district')}>{openPanel === 'district' && <DistrictSettings />}</Card>
            {!isImportFirst && <Card level={2} title={say('survey.import.title')} summary={district.roads?.name} {...panel('import')}>{importPanel}</Card>}
            {district.roads && <Card level={2} title={say('survey.elevation.title')} summary={district.terrain?.name ?? say('survey.elevation.none')} {...panel('elevation')}>{openPanel === 'elevation' && <ElevationPanel elevationImport={elevationImport} />}</Card>}
            <ButtonLink href={exchangeHref(districtId)} label={say('survey.exchange')} icon="move" size="s" />
          </section>
          <section ref={setMapPart} className={styles.mapPart} aria-label={say('survey.map')}>
            <DistrictMap
              ref={setMap} sites={sites} className={styles.map} start={district.bounds}
              {...(drawn.district && { district: drawn.district })} isLoading={drawn.isLoading}
              {...(district.map && { attribution: [district.map.attribution] })} {...(district.terrain && { terrain: district.terrain })}
              {...(placing && { pending: placing.kind })}
              {...(placing?.moveId !== undefined && { pendingWords: say('survey.moving', { name: names(placing.moveId) ?? '' }) })}
              onPlace={(point, onSiteId) => { if (placing) put(placing, point, { onSiteId }) }} onStopPlacing={() => { setPlacing(undefined) }}
              onPick={(id) => { if (id !== looked?.id) select(id) }}
              onMove={(id, point) => { put({ kind: findPlaceOf(district, id)?.kind ?? 'source', moveId: id }, point) }}
              onLocate={(point, accuracy_m) => { if (placing) put(placing, point, { pointEvidence: deviceEvidence(accuracy_m) }); else setHere({ point, accuracy_m }) }}
            />
          </section>
        </div>
      </SurveyProvider>
    </Shell>
  )
}

/** A place that has moved is no longer known the way the old one was. */
function moveEdit(kind: SurveyKind, id: string, point: Point, pointEvidence: Evidence | null | undefined) {
  const collection = collectionOf[kind]
  return pointEvidence === undefined
    ? { kind: 'moveSite' as const, collection, id, point }
    : { kind: 'setFields' as const, collection, id, set: { point }, evidence: { point: pointEvidence } }
}

const deviceEvidence = (accuracy_m: number): Evidence => ({ mark: 'measured', on: localDay(), source: say('survey.here.source', { accuracy: formatQuantity(feetFromMetres(accuracy_m), 'ft', 'us', { digits: 0 }) }) })
