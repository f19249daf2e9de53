'use client'

import { useCallback, useMemo } from 'react'
import { logWorld, readLog, type LogWorld, type ReadLog, type TimedEvent } from '@/lib/field-log'
import type { EditBody, FieldLog, SiteEvent } from '@/lib/plan'
import { getClient, getEventLog, logDevice, mintId, useDistrict, useDocument, useLogEvents, type DocumentView, type EventsView } from '../_client'
import { say, type NameOf } from '../_text'
import '../_text/areas/log'
import { useTellRefused } from '../_ui/use-tell-refused'

/** What somebody notes: the rest of an event is added to it. */
type Noted = Pick<SiteEvent, 'post' | 'kind'> & Partial<Omit<SiteEvent, 'id' | 'logId'>>

export type LogDesk = {
  log: FieldLog | undefined
  status: DocumentView['status']
  districtName: string | undefined
  world: LogWorld
  names: NameOf
  events: EventsView
  /** What counts of the events, on one clock, and what does not fit together. */
  read: ReadLog
  /** The same events by this device's own clock, as whoever holds it reads the time. */
  here: readonly TimedEvent[]
  /** Keeps events on the device before it comes back. @returns those made */
  note(noted: readonly Noted[]): Promise<SiteEvent[]>
  edit(body: EditBody, label: string): void
}

const noWorld: LogWorld = { units: [], sites: [], load_gal: () => undefined, capacity_gal: () => undefined, dump_s: () => undefined, findTrip: () => undefined, demand: [] }

/** A log with its events, and the way to add to it. */
export function useLog(districtId: string, logId: string): LogDesk {
  const { doc: log, status } = useDocument<FieldLog>(logId)
  const district = useDistrict(districtId).doc
  const events = useLogEvents(logId)
  const tellRefused = useTellRefused()
  // A log with a plan stands on the district as it was then; only one without needs the live one.
  const live = log?.planned ? undefined : district
  const { planned, places, units } = log ?? {}
  const world = useMemo(() => (places && units ? logWorld({ places, units, ...(planned && { planned }) }, live) : noWorld), [planned, places, units, live])
  const read = useMemo(() => readLog(events.events, world), [events.events, world])
  const here = useMemo(() => onThisClock(read), [read])
  const known = useMemo(() => new Map([...world.units, ...world.sites].map(({ id, name }) => [id, name])), [world])
  const names: NameOf = useCallback((id) => known.get(id), [known])

  const note = useCallback(async (noted: readonly Noted[]) => {
    const made = noted.map((one): SiteEvent => ({ id: mintId(), logId, device: logDevice(), at_ms: Date.now(), entered: 'button', ...one }))
    await getEventLog(logId).add(made)
    return made
  }, [logId])
  const edit = useCallback((body: EditBody, label: string) => {
    const refused = getClient().edit(logId, body, { label })
    tellRefused(refused)
  }, [logId, tellRefused])
  return { log, status, districtName: district?.name ?? planned?.district.name, world, names, events, read, here, note, edit }
}

function onThisClock({ events, clocks }: ReadLog): readonly TimedEvent[] {
  const shift_ms = events.length === 0 ? 0 : (clocks.find(({ device }) => device === logDevice())?.shift_s ?? 0) * 1000
  return shift_ms === 0 ? events : events.map((event) => ({ ...event, at_ms: event.at_ms - shift_ms }))
}

/** A post as one word of the address: `fill.pond`, `attack`. */
export const postKey = ({ kind, siteId }: SiteEvent['post']): string => (siteId === undefined ? kind : `${kind}.${siteId}`)

/** Every post that the places of a log have. */
export function postsOf(world: LogWorld): SiteEvent['post'][] {
  const fills = world.sites.filter(({ kind }) => kind === 'fill')
  const dumps = world.sites.filter(({ kind }) => kind === 'dump')
  return [
    ...fills.map(({ id }) => ({ kind: 'fill' as const, siteId: id })), ...dumps.map(({ id }) => ({ kind: 'dump' as const, siteId: id })),
    { kind: 'attack' as const }, ...fills.map(({ id }) => ({ kind: 'draft' as const, siteId: id })),
  ]
}

export const postName = ({ kind, siteId }: SiteEvent['post'], names: NameOf): string =>
  kind === 'attack' || siteId === undefined ? say(`log.post.${kind}.short`) : say(`log.post.${kind}`, { site: names(siteId) ?? siteId })
