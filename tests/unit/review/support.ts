import type { ReviewAssumption } from '@/lib/review/assumption'
import type { Mark, PlaceKind, TenderEvent } from '@/lib/review/marks'
import { readTrips, type Trips } from '@/lib/review/read-trips'
import type { ShuttleSpec } from '@/lib/shuttle'
import { layout } from '../shuttle/layout'

/** `dump dumping 130` lines of one tender, in the order in which they were logged. */
const eventsFrom = (lines: string): TenderEvent[] => lines.trim().split('\n').map((line, k) => {
  const [place, mark, at] = line.trim().split(/\s+/)
  return { id: `e${k}`, place: place as PlaceKind, mark: mark as Mark, at_s: Number(at), siteId: place! }
})

/** A round and a bit of the tender of `layout`, as it is planned: 840 s a round, 1,000 gal a load. */
export const asPlanned = `
  dump arrived 100
  dump dumping 130
  dump empty 190
  dump left 220
  fill arrived 520
  fill hookedUp 550
  fill filling 550
  fill full 610
  fill left 640
  dump arrived 940
  dump dumping 970
  dump empty 1030
  dump left 1060`

export const tripsOf = (lines: string, spec: ShuttleSpec = layout(), end_s = 1060): Trips =>
  readTrips([{ id: 'T1', usable_gal: 1000 }], new Map([['T1', lines.trim() === '' ? [] : eventsFrom(lines)]]), spec, end_s)

export const told = (assumptions: readonly ReviewAssumption[]): string[] =>
  assumptions.map(({ kind, place, mark, at_s, basis }) => [kind, place, mark, at_s?.toFixed(0), basis].filter(Boolean).join(' '))
