'use client'

import { useCallback, useMemo, useState } from 'react'
import { resourceKinds, resourcesOf, stationIdOf, withoutItem, type Resource, type ResourceKind } from '@/lib/plan'
import { getClient, useDistrict } from '../_client'
import { useAct } from '../_fields/use-act'
import { BringBack } from '../_frame/bring-back'
import { Conflicts } from '../_frame/conflicts'
import { FirstSteps } from '../_frame/first-steps'
import { UndoButtons } from '../_frame/undo-buttons'
import { Shell } from '../_frame/shell'
import { say, type NameOf } from '../_text'
import '../_text/areas/resources'
import '../_text/areas/survey'
import { ButtonLink } from '../_ui/button-link'
import { ChoiceField } from '../_ui/choice-field'
import { EmptyState } from '../_ui/empty-state'
import { joinClasses } from '../_ui/join-classes'
import { SearchBox } from '../_ui/search-box'
import { screenHref } from '../_links/screens'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useAddress } from '../_ui/use-address'
import { useAfterPaint } from '../_ui/use-after-paint'
import { AddApparatus, AddEquipment, type Added } from './add-resource'
import { copyEdit } from './copy-resource'
import { ResourceBody } from './opened-body'
import { BETWEEN, ResourceCard } from './resource-card'
import { resourceSummary, resourceWords } from './resource-summary'
import styles from './resources.module.css'

/** Words of a group of resources. */
const groupTitle = (kind: ResourceKind): string => say(`resources.many.${kind}`)
const NO_STATION = 'none'
/** Their figures are compared down the list; the others stand beside each other. */
const vehicleKinds: readonly ResourceKind[] = ['pumper', 'tender', 'portablePump']

/** Apparatus, equipment and stations of a district, each a card that opens in place. */
export function Resources({ districtId }: { districtId: string }) {
  const { item: itemId } = useAddress('item')
  const view = useDistrict(districtId)
  const district = view.doc
  const [system] = useUnitSystem()
  const afterPaint = useAfterPaint()
  const [openId, setOpenId] = useState(itemId)
  const [addressed, setAddressed] = useState(itemId)
  const [search, setSearch] = useState('')
  const [kind, setKind] = useState<ResourceKind>()
  const [stationId, setStationId] = useState<string>()
  const resources = useMemo(() => (district ? resourcesOf(district) : []), [district])
  const itemNames = useMemo(() => new Map(resources.map(({ item }) => [item.id as string, item.name])), [resources])
  const names: NameOf = useCallback((id) => itemNames.get(id), [itemNames])
  const { edit, remove } = useAct(districtId, names)
  const ready = useMemo(() => (district ? resources.map((resource) => ({ resource, summary: resourceSummary(resource, district, system), words: resourceWords(resource, district, system) })) : []), [resources, district, system])
  const found = useMemo(() => {
    const asks = search.toLowerCase().split(/\s+/).filter(Boolean)
    return ready.filter(({ resource, words }) => (kind === undefined || resource.kind === kind)
      && (stationId === undefined || (district && (stationIdOf(resource, district) ?? NO_STATION) === stationId))
      && asks.every((ask) => words.includes(ask)))
  }, [ready, search, kind, stationId, district])

  // The card opens at once; the address follows when it is on the screen.
  const open = useCallback((id: string | undefined) => {
    setOpenId(id)
    afterPaint(() => { history.replaceState(null, '', id === undefined ? location.pathname : `${location.pathname}?item=${encodeURIComponent(id)}`) })
  }, [afterPaint])

  // Somebody came to another item by a link while the page was open.
  if (itemId !== addressed) {
    setAddressed(itemId)
    setOpenId(itemId)
  }

  const shellDistrict = district && { id: districtId, name: district.name }
  if (view.status === 'missing' || view.status === 'deleted')
    return <Shell screen="resources" title={say('resources.title')}><EmptyState title={say(view.status === 'deleted' ? 'survey.put-away' : 'survey.missing')}>{view.status === 'deleted' && <BringBack docId={districtId} />}<ButtonLink href="/" label={say('shell.home')} /></EmptyState></Shell>
  if (!district) return <Shell district={shellDistrict} screen="resources" title={say('resources.title')}><EmptyState title={say(view.status === 'unreachable' ? 'resources.unreachable' : 'resources.loading')} /></Shell>

  const newId = () => getClient().newId()
  const add = (body: Added, label = say('resources.added', { name: String(body.item.name) })) => { if (edit(body, label)) open(body.item.id) }
  const copy = (resource: Resource) => { add(copyEdit(resource, newId()), say('resources.copy-what', { name: resource.item.name })) }
  const shown = [...found, ...ready.filter((one) => one.resource.item.id === openId && !found.includes(one))]
  return (
    <Shell district={shellDistrict} screen="resources" actions={<UndoButtons />}>
      <div className={styles.page}>
        <header className={styles.head}>
          <h1 className={styles.title}>{say('resources.title')}</h1>
          <AddApparatus district={district} newId={newId} onAdd={add} />
          <AddEquipment newId={newId} onAdd={add} />
        </header>
        <Conflicts docIds={[districtId]} names={names} />
        {resources.length > 0 && (
          <div className={styles.finder}>
            <SearchBox label={say('resources.search')} search={search} onSearch={setSearch} foundCount={found.length} />
            <ChoiceField label={say('resources.kind')} none={say('resources.kind.all')} value={kind} choices={resourceKinds.filter((one) => resources.some((resource) => resource.kind === one)).map((value) => ({ value, label: groupTitle(value) }))} onCommit={setKind} />
            <ChoiceField
              label={say('resources.station')} none={say('resources.station.all')} value={stationId} onCommit={setStationId}
              choices={[...district.stations.map(({ id, name }) => ({ value: id as string, label: name })), { value: NO_STATION, label: say('resources.no-station') }]}
            />
          </div>
        )}
        {district.apparatus.length === 0 && <EmptyState title={say('resources.empty')} text={say('resources.empty.text')} />}
        <FirstSteps district={district} screen="resources" />
        {resources.length > 0 && shown.length === 0 && <p className={styles.quiet}>{say('resources.none-found')}</p>}
        {resourceKinds.filter((one) => shown.some(({ resource }) => resource.kind === one)).map((one) => {
          const group = shown.filter(({ resource }) => resource.kind === one)
          return (
            <section key={one} className={styles.group} aria-labelledby={`resources-${one}`}>
              <h2 id={`resources-${one}`} className={styles.groupTitle}>{groupTitle(one)} <span className={styles.count}>{group.length}</span></h2>
              <ul className={joinClasses(styles.cards, !vehicleKinds.includes(one) && styles.beside)}>
                {group.map(({ resource, summary: { text, figures, attention } }) => (
                  <li key={resource.item.id}>
                    <ResourceCard id={resource.item.id} name={resource.item.name} text={text} figures={figures.join(BETWEEN)} attention={attention} isOpen={resource.item.id === openId} onOpen={open}>
                      {resource.item.id === openId && (
                        <ResourceBody resource={resource} district={district} onCopy={copy} onRemove={(gone) => { remove(withoutItem(gone.list, gone.item.id, district), gone.item.name); setOpenId(undefined) }} />
                      )}
                    </ResourceCard>
                  </li>
                ))}
              </ul>
            </section>
          )
        })}
        {district.stations.length === 0 && (
          <p className={styles.quiet}>{say('resources.station.none')} <ButtonLink size="s" look="quiet" iconAfter="arrowRight" label={say('resources.station.place')} href={screenHref('survey', districtId)} /></p>
        )}
      </div>
    </Shell>
  )
}
