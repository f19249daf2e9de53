import { middleOf } from '../middle-of'
import { roundOf, type ShuttleSpec } from '../shuttle'
import type { Stay } from './marks'
import { readyAt_s, turnOf, waitsFor_s } from './places'
import { siteIndex, tenderHappened, type TenderHappened } from './tender-happened'
import type { TenderLog } from './tender-logs'

export type Happened = {
  readonly tenders: readonly TenderHappened[]
  /** Of the plan and never seen to dump. */
  readonly missingIds: readonly string[]
  /** By site id. */
  readonly ready_s: ReadonlyMap<string, number>
  /** By fill site: its filling times over those planned, in the middle. */
  readonly fillFactor: ReadonlyMap<string, number>
}

/** Fewer fillings say nothing about the site itself. */
const SITE_LEAST = 3

/** Lays what was logged beside the plan, in the numbers that a replay takes. */
export function happenedOf(spec: ShuttleSpec, logs: readonly TenderLog[], end_s: number): Happened {
  const served = logs.filter(({ loads }) => loads.length > 0)
  const turns = new Map(served.map((log) => [log.tender.id, log.stays.map(turnOf)]))
  const siteOf = (log: TenderLog, stay: Stay): number => siteIndex(spec, log, stay)
  const ready_s = new Map<string, number>()
  const waits = new Map<Stay, number>()
  for (const place of ['dump', 'fill'] as const) {
    const sites = place === 'dump' ? spec.dumps.map(({ id, ready_s: at_s, positionCount }) => ({ id, at_s, count: positionCount })) : spec.fills.map(({ id, ready_s: at_s, bayCount }) => ({ id, at_s, count: bayCount }))
    sites.forEach(({ id, at_s, count }, index) => {
      const here = served.flatMap((log) => log.stays.flatMap((stay, k) => {
        const turn = turns.get(log.tender.id)![k]
        return stay.place === place && turn && siteOf(log, stay) === index ? [{ stay, turn, usual_s: log.usual[place === 'dump' ? 'dumpPosition' : 'fillPosition'] }] : []
      }))
      const first = here.reduce<(typeof here)[number] | undefined>((a, b) => (!a || b.turn.taken_s < a.turn.taken_s ? b : a), undefined)
      const ready = readyAt_s(here.map(({ turn }) => turn), first?.usual_s ?? 0, at_s)
      ready_s.set(id, ready)
      const waited_s = waitsFor_s(here.map(({ turn }) => turn), count, ready)
      here.forEach(({ stay }, k) => waits.set(stay, waited_s[k]!))
    })
  }
  const fillings = served.flatMap((log) => log.stays.flatMap((stay) => (stay.place === 'fill' && stay.times_s.filling !== undefined && stay.times_s.full !== undefined ? [{ log, stay, from_s: stay.times_s.filling, upTo_s: stay.times_s.full, site: siteOf(log, stay) }] : [])))
  const tenders = served.map((log) => tenderHappened(spec, log, waits, ready_s, fillings, end_s))
  const fillFactor = new Map(spec.fills.map(({ id, bayRate_gpm, flowingBayCount }, f) => {
    const factors = fillings.filter(({ site }) => site === f).flatMap(({ log, stay, from_s, upTo_s }) => {
      const planned = spec.tenders.find((one) => one.id === log.tender.id)
      if (!planned || !stay.seen.has('filling') || !stay.seen.has('full')) return []
      const middle_s = (from_s + upTo_s) / 2
      const busyCount = fillings.filter((one) => one.site === f && one.from_s <= middle_s && one.upTo_s >= middle_s).length
      const rate_gpm = bayRate_gpm[Math.min(busyCount, flowingBayCount ?? Infinity, bayRate_gpm.length) - 1] ?? 0
      const { fill_s } = roundOf(planned, rate_gpm)
      return fill_s > 0 && upTo_s > from_s ? [(upTo_s - from_s) / fill_s] : []
    })
    return [id, factors.length >= SITE_LEAST ? middleOf(factors) : 1]
  }))
  return { tenders, ready_s, fillFactor, missingIds: spec.tenders.flatMap(({ id }) => (served.some(({ tender }) => tender.id === id) ? [] : [id])) }
}
