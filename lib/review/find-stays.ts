import { tenderSteps } from '../field-log'
import type { NoteAssumption } from './assumption'
import { awayFrom_s, otherPlace, stepOf, type Mark, type Stay, type TenderEvent, type TripTimes } from './marks'

/**
 * Sorts what was logged of one tender into its stays, dump and fill by turns.
 *
 * A mark belongs to the stay that goes on when it is the next of it. One that comes again, or too late for its place, is
 * of a new stay when at least half the time has passed in which the tender can have been away and back; until then it is
 * doubled, or out of order. One for the place before, sooner than that, belongs to the stay before. Two stays running at one kind of
 * place have one at the other between them.
 *
 * @param events in any order
 * @param usual  times with nobody in the way, all above 0
 * @returns stays with the times that were logged; `fillMissing` gives the others
 */
export function findStays(events: readonly TenderEvent[], usual: TripTimes, apparatusId: string, note: NoteAssumption): Stay[] {
  const stays: Stay[] = []
  const inOrder = events.toSorted((a, b) => a.at_s - b.at_s || stepOf(a.place, a.mark) - stepOf(b.place, b.mark) || (a.id < b.id ? -1 : 1))
  const about = (event: TenderEvent, stay?: Stay) => ({ apparatusId, place: event.place, siteId: event.siteId ?? stay?.siteId, mark: event.mark, at_s: event.at_s, eventIds: [event.id] })
  for (const event of inOrder) {
    const now = stays.at(-1)
    const before = stays.at(-2)
    if (now?.place === event.place) {
      if (takes(now, event)) put(now, event)
      else if (event.at_s - latest_s(now) >= awayFrom_s(event.place, usual) / 2) stays.push(emptyStay(otherPlace(event.place)), stayOf(event))
      else if (event.mark in now.times_s) note({ ...about(event, now), kind: 'doubled' })
      else {
        putInOrder(now, event)
        note({ ...about(event, now), kind: 'out-of-order' })
      }
      continue
    }
    // Back so soon: it never went.
    if (now && before?.place === event.place && now.eventIds.length > 0 && event.at_s - latest_s(before) < awayFrom_s(event.place, usual) / 2 && !isDone(before)) {
      if (event.mark in before.times_s) {
        note({ ...about(event, before), kind: 'doubled' })
        continue
      }
      const fits = takes(before, event)
      if (fits) put(before, event)
      else putInOrder(before, event)
      if (event.mark === 'left' || now.eventIds.length > 1) note({ ...about(event, before), kind: 'out-of-order' })
      else {
        for (const [mark, at_s] of Object.entries(now.times_s)) note({ kind: 'contradicts', apparatusId, place: now.place, siteId: now.siteId, mark: mark as Mark, at_s, eventIds: now.eventIds })
        stays.pop()
      }
      continue
    }
    stays.push(stayOf(event))
  }
  return uncross(withBetween(stays), apparatusId, note)
}

const emptyStay = (place: Stay['place']): Stay => ({ place, times_s: {}, seen: new Set(), eventIds: [], water_gal: {} })

function stayOf(event: TenderEvent): Stay {
  const stay = emptyStay(event.place)
  put(stay, event)
  return stay
}

const isDone = (stay: Stay): boolean => 'left' in stay.times_s

const latest_s = (stay: Stay): number => Math.max(...Object.values(stay.times_s))

/** The mark comes after all that the stay has. */
const takes = (stay: Stay, { place, mark }: TenderEvent): boolean => Object.keys(stay.times_s).every((known) => stepOf(place, known) < stepOf(place, mark))

function put(stay: Stay, { mark, at_s, siteId, water_gal, id }: TenderEvent): void {
  stay.times_s[mark] = at_s
  stay.seen.add(mark)
  stay.siteId ??= siteId
  stay.eventIds.push(id)
  if (water_gal !== undefined) stay.water_gal[mark] = water_gal
}

/** The times stay, the marks take them in the order of a stay. */
function putInOrder(stay: Stay, event: TenderEvent): void {
  put(stay, event)
  const marks = (tenderSteps[stay.place] as readonly Mark[]).filter((mark) => mark in stay.times_s)
  const times_s = marks.map((mark) => stay.times_s[mark]!).sort((a, b) => a - b)
  marks.forEach((mark, k) => {
    // A time that another mark was logged with is taken for it, not seen.
    if (stay.times_s[mark] !== times_s[k]) stay.seen.delete(mark)
    stay.times_s[mark] = times_s[k]!
  })
}

/** Dump and fill take turns. */
function withBetween(stays: readonly Stay[]): Stay[] {
  return stays.flatMap((stay, k) => (stays[k - 1]?.place === stay.place ? [emptyStay(otherPlace(stay.place)), stay] : [stay]))
}

/** Nobody is at two places at once: the water is counted at the dump site, so its clock goes before. */
function uncross(stays: Stay[], apparatusId: string, note: NoteAssumption): Stay[] {
  for (let k = 1; k < stays.length; k++) {
    const [from, to] = [stays[k - 1]!, stays[k]!]
    const fill = from.place === 'fill' ? from : to
    const other = fill === from ? to : from
    const edge_s = Object.values(other.times_s).reduce((edge, at_s) => (fill === from ? Math.min(edge, at_s) : Math.max(edge, at_s)), fill === from ? Infinity : -Infinity)
    for (const mark of Object.keys(fill.times_s) as Mark[]) {
      const at_s = fill.times_s[mark]!
      if (fill === from ? at_s <= edge_s : at_s >= edge_s) continue
      note({ kind: 'crossed', apparatusId, place: 'fill', siteId: fill.siteId, mark, at_s, eventIds: fill.eventIds })
      delete fill.times_s[mark]
      fill.seen.delete(mark)
    }
  }
  return stays
}
