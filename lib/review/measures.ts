import { tenderSteps } from '../field-log'
import { middleOf } from '../middle-of'
import { SECONDS_PER_MINUTE } from '../units'
import { dumpAlone_s } from '../shuttle/round-of'
import type { ShuttleSpec, TripStage } from '../shuttle'
import { maybeHeldBack } from './held-back'
import type { Load } from './loads'
import type { LogEvents } from './log-events'
import { noTimes, stageUpTo, type Mark, type Stay } from './marks'
import { GUESS_SPREAD, meanWithDoubt, ODD_FACTOR } from './mean-with-doubt'
import type { Measure, Withheld } from './measure'
import { pumpMeasures } from './pump-measures'
import { turnOf, waitsFor_s } from './places'
import type { TenderLog } from './tender-logs'

/** More than so many times what the plan reckons a site to give, no pump or opening there gives. Assumed. */
const BEYOND_FACTOR = 1.5
/** So many times of all say what is usual. Assumed. */
const USUAL_COUNT = 3

/** What values say, with why it is not to be taken. Values for which `why` gives a reason count only where no other is left. */
function measured(all: readonly number[], why: (value: number) => Withheld | undefined): Pick<Measure, 'value' | 'count' | 'low' | 'high' | 'spreadShare' | 'withheld'> {
  const good = all.filter((value) => why(value) === undefined)
  const { isScattered, ...mean } = meanWithDoubt(good.length > 0 ? good : all)
  const withheld = good.length === 0 ? why(all[0]!) : mean.count === 1 && !isScattered ? 'once' : isScattered || mean.spreadShare >= GUESS_SPREAD ? 'scattered' : undefined
  return { ...mean, ...(withheld && { withheld }) }
}

/** Whether a time is far from what all took, and longer than planned by as much where a plan says. */
function oddAmong(all: readonly number[], planned_s?: number): (value: number) => Withheld | undefined {
  const usual_s = all.length >= USUAL_COUNT ? middleOf(all) : planned_s
  if (usual_s === undefined) return () => undefined
  return (value) => (value > ODD_FACTOR * Math.max(usual_s, planned_s ?? 0) || value < Math.min(usual_s, planned_s ?? Infinity) / ODD_FACTOR ? 'odd' : undefined)
}

const handlingFields = [['dumpPosition', 'dumpPosition_s'], ['dumpClear', 'dumpClear_s'], ['fillPosition', 'fillPosition_s'], ['fillClear', 'fillClear_s']] as const

/**
 * What a log measured: each tender's handling and dump rate, the roads between the sites, the fill rate of a site with one tender in it, and
 * what pumpers showed. Only times of which both ends were logged count, and positions only where nobody was in the way. What
 * is no surer than a guess says why it is not to be taken.
 */
export function measuresOf(logs: readonly TenderLog[], events: LogEvents): Measure[] {
  const spec = events.compiled?.spec
  const clear = clearTimes(logs, spec)
  const all = logs.flatMap(({ loads }) => loads)
  const needed_gpm = events.needed_gpm ?? 0
  const tenders = logs.flatMap((log): Measure[] => {
    const times = clear.get(log.tender.id)!
    const planned = spec?.tenders.find(({ id }) => id === log.tender.id)
    const handling = handlingFields.flatMap(([stage, field]): Measure[] => (times[stage].length > 0
      ? [{ doc: 'district', collection: 'apparatus', itemId: log.tender.id, field, ...measured(times[stage], oddAmong([...clear.values()].flatMap((one) => one[stage]), planned?.[field])) }] : []))
    return [...handling, ...dumpRate(log, all, needed_gpm, events)]
  })
  return [...tenders, ...roads(logs), ...fillRates(logs, spec), ...pumpMeasures(events)].filter(({ value }) => value > 0)
}

/** Times of stages that nobody and nothing stretched. */
function clearTimes(logs: readonly TenderLog[], spec: ShuttleSpec | undefined): Map<string, Record<TripStage, number[]>> {
  const waited = new Map<Stay, number>()
  for (const place of ['dump', 'fill'] as const) {
    const here = logs.flatMap(({ stays }) => stays.filter((stay) => stay.place === place && turnOf(stay) !== undefined))
    for (const siteId of new Set(here.map((stay) => stay.siteId))) {
      const site = place === 'dump' ? spec?.dumps.find(({ id }) => id === siteId)?.positionCount : spec?.fills.find(({ id }) => id === siteId)?.bayCount
      const own = here.filter((stay) => stay.siteId === siteId)
      waitsFor_s(own.map((stay) => turnOf(stay)!), site ?? 1, 0).forEach((wait_s, k) => waited.set(own[k]!, wait_s))
      // Whoever came before the first was served may have stood before a site that was not ready.
      const opened_s = Math.min(...own.map((stay) => turnOf(stay)!.taken_s))
      for (const stay of own) if (turnOf(stay)!.arrived_s <= opened_s) waited.set(stay, Infinity)
    }
  }
  return new Map(logs.map(({ tender, stays }) => {
    const times = noTimes()
    for (const stay of stays) {
      const marks = tenderSteps[stay.place] as readonly Mark[]
      marks.forEach((mark, step) => {
        const stage = stageUpTo[stay.place][mark]
        const before = marks[step - 1]
        const isPosition = stage === 'dumpPosition' || stage === 'fillPosition'
        if (!stage || !before || !stay.seen.has(mark) || !stay.seen.has(before) || (isPosition && (waited.get(stay) ?? Infinity) > 0)) return
        const took_s = stay.times_s[mark]! - stay.times_s[before]!
        if (took_s > 0) times[stage].push(took_s)
      })
    }
    return [tender.id, times]
  }))
}

/** A rate so far below what the plan has is put down to a full tank, not to the tender: that is to be timed into an empty one. Assumed. */
const SLOWER_SHARE = 0.7
/** Loads that ran nearly as fast as the quickest ran freely. Assumed. */
const FREE_SHARE = 0.85

/**
 * The rate by the way it dumped there: a tender whose rear and side differ has a rate for each. A full tank only ever slows a dump, so
 * loads that it may have held back are left out, and of the others only those near the quickest count.
 */
function dumpRate({ tender, stays, loads }: TenderLog, all: readonly Load[], needed_gpm: number, { compiled }: LogEvents): Measure[] {
  const found = loads.flatMap((load) => {
    const { from_s, upTo_s, given_gal, isDone, siteId } = load
    const stay = stays.find((one) => one.place === 'dump' && one.times_s.dumping === from_s)
    const isSeen = isDone && stay?.seen.has('dumping') && stay.seen.has('empty')
    if (!isSeen || upTo_s <= from_s) return []
    const here = all.filter((one) => one.siteId === siteId)
    const site = compiled?.spec?.dumps.find(({ id }) => id === siteId)
    const capacity_gal = site && site.capacity_gal + (site.front?.capacity_gal ?? 0)
    return maybeHeldBack(load, here, needed_gpm * (site?.demandShare ?? 1), capacity_gal) ? [] : [{ siteId, rate_gpm: (given_gal * SECONDS_PER_MINUTE) / (upTo_s - from_s) }]
  })
  const planned = compiled?.spec?.tenders.find(({ id }) => id === tender.id)
  const planned_gpm = planned ? (planned.usable_gal * SECONDS_PER_MINUTE) / dumpAlone_s(planned) : 0
  const quickest_gpm = Math.max(...found.map(({ rate_gpm }) => rate_gpm))
  if (quickest_gpm < planned_gpm * SLOWER_SHARE) return []
  const rates = found.filter(({ rate_gpm }) => rate_gpm >= quickest_gpm * FREE_SHARE)
  if (rates.length === 0) return []
  const unit = compiled?.bundle.district.apparatus.find(({ id }) => id === tender.id)
  const manner = compiled?.bundle.plan.dumpSites.find(({ id }) => id === rates[0]?.siteId)?.manner
  const own = manner === 'driveThrough' ? 'dumpSide_gpm' : 'dumpRear_gpm'
  const field = unit?.kind === 'tender' && unit[own] ? own : 'dump_gpm'
  return [{ doc: 'district', collection: 'apparatus', itemId: tender.id, field, ...measured(rates.map(({ rate_gpm }) => rate_gpm), () => undefined) }]
}

type Way = { fromId: string; toId: string; times_s: number[] }

function roads(logs: readonly TenderLog[]): Measure[] {
  const all = logs.map(({ tender, stays }) => ({ tender, ways: waysOf(stays) }))
  return all.flatMap(({ tender, ways }) => [...ways].map(([key, { fromId, toId, times_s }]): Measure => (
    { doc: 'plan', collection: 'legNotes', itemId: tender.id, field: 'travel_s', fromId, toId, ...measured(times_s, oddAmong(all.flatMap((one) => one.ways.get(key)?.times_s ?? []))) })))
}

function waysOf(stays: readonly Stay[]): Map<string, Way> {
  const ways = new Map<string, Way>()
  stays.forEach((stay, k) => {
    const next = stays[k + 1]
    if (!next || stay.siteId === undefined || next.siteId === undefined || !stay.seen.has('left') || !next.seen.has('arrived')) return
    const took_s = next.times_s.arrived! - stay.times_s.left!
    if (took_s <= 0) return
    const key = `${stay.siteId} ${next.siteId}`
    const way = ways.get(key) ?? { fromId: stay.siteId, toId: next.siteId, times_s: [] }
    way.times_s.push(took_s)
    ways.set(key, way)
  })
  return ways
}

/** Into one tender alone, so that nobody shared the pump. */
function fillRates(logs: readonly TenderLog[], spec: ShuttleSpec | undefined): Measure[] {
  const fillings = logs.flatMap(({ tender, stays }) => stays.flatMap(({ place, siteId, times_s: { filling, full }, seen, water_gal }) => (place === 'fill' && filling !== undefined && full !== undefined
    ? [{ siteId, from_s: filling, upTo_s: full, isSeen: seen.has('filling') && seen.has('full'), load_gal: water_gal.full ?? tender.usable_gal }] : [])))
  return (spec?.fills ?? []).flatMap(({ id, bayRate_gpm }): Measure[] => {
    const here = fillings.filter(({ siteId }) => siteId === id)
    const rates = here.flatMap((one) => {
      const isAlone = here.every((other) => other === one || other.upTo_s <= one.from_s || other.from_s >= one.upTo_s)
      return isAlone && one.isSeen && one.load_gal !== undefined && one.upTo_s > one.from_s ? [(one.load_gal * SECONDS_PER_MINUTE) / (one.upTo_s - one.from_s)] : []
    })
    const most_gpm = bayRate_gpm[0] ?? Infinity
    return rates.length > 0 ? [{ doc: 'plan', collection: 'fillSites', itemId: id, field: 'rate_gpm', ...measured(rates, (rate_gpm) => (rate_gpm > BEYOND_FACTOR * most_gpm ? 'beyond' : undefined)) }] : []
  })
}
