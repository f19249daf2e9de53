import type { ShuttleSpec, TripStage } from '../shuttle'
import { noTimes, type PlaceKind, type Stay } from './marks'
import type { TenderLog } from './tender-logs'

/** What happened to one tender, trip by trip, from its first dump on; counted as the simulation counts. */
export type TenderHappened = {
  readonly id: string
  /** First arrival at a dump site. */
  readonly arrive_s: number
  /** End of its last dump, where it was not seen again although it could have been. */
  readonly gone_s?: number
  readonly dumpIndex: number
  readonly fillIndex: number
  /** Each trip's time for the stages; positions without waiting. */
  readonly stages_s: Readonly<Record<TripStage, readonly number[]>>
  /** Waiting for a place, before each dump and each filling, standing hooked up included. */
  readonly dumpWaits_s: readonly number[]
  readonly fillWaits_s: readonly number[]
  /** Standing hooked up while nobody was being filled. */
  readonly stops_s: readonly number[]
  readonly loads_gal: readonly number[]
}

/** Hooked up until water runs is hand work up to this, longer it is a stop. Assumed. */
const OPENING_S = 15
/** A tender that left and was not seen again for so much of its usual time on the road, and this beside it, is gone. Assumed. */
const GONE_FACTOR = 1.5
const GONE_BESIDE_S = 120
/** Water running into a tender at a fill site. */
export type Filling = { readonly stay: Stay; readonly from_s: number; readonly upTo_s: number; readonly site: number }

/** Index of the plan's site of a stay; the tender's own where the log names none of the plan's. */
export function siteIndex(spec: ShuttleSpec, { tender }: TenderLog, { place, siteId }: Stay): number {
  const sites: readonly { id: string }[] = place === 'dump' ? spec.dumps : spec.fills
  const named = sites.findIndex(({ id }) => id === siteId)
  if (named >= 0) return named
  const planned = spec.tenders.find(({ id }) => id === tender.id)
  return (place === 'dump' ? planned?.dumpIndex : planned?.fillIndex) ?? 0
}

/**
 * One tender's trips in the simulation's counting.
 *
 * @param waits    waiting for a place, by stay
 * @param ready_s  when each site was ready
 * @param fillings of all tenders
 */
export function tenderHappened(spec: ShuttleSpec, log: TenderLog, waits: ReadonlyMap<Stay, number>, ready_s: ReadonlyMap<string, number>, fillings: readonly Filling[], end_s: number): TenderHappened {
  const from = log.stays.findIndex((stay) => stay.place === 'dump' && stay.times_s.dumping !== undefined)
  const stays = log.stays.slice(from)
  const stages = noTimes()
  const dumpWaits_s: number[] = []
  const fillWaits_s: number[] = []
  const stops_s: number[] = []
  const push = (stage: TripStage, from_s: number | undefined, upTo_s: number | undefined, less_s = 0): void => {
    if (from_s !== undefined && upTo_s !== undefined) stages[stage].push(Math.max(0, upTo_s - from_s - less_s))
  }
  stays.forEach((stay, k) => {
    const { arrived, dumping, empty, left, hookedUp, filling, full } = stay.times_s
    const next = stays[k + 1]
    const wait_s = waits.get(stay) ?? 0
    const sites: readonly { id: string }[] = stay.place === 'dump' ? spec.dumps : spec.fills
    const opened_s = ready_s.get(sites[siteIndex(spec, log, stay)]?.id ?? '') ?? 0
    // Waiting for the site itself is no waiting for a place, and no hand work either.
    const before_s = wait_s > 0 ? wait_s : Math.max(0, Math.min(opened_s, (dumping ?? hookedUp ?? opened_s)) - (arrived ?? opened_s))
    if (stay.place === 'dump') {
      if (dumping !== undefined) dumpWaits_s.push(wait_s)
      push('dumpPosition', arrived, dumping, before_s)
      push('dump', dumping, empty)
      push('dumpClear', empty, left)
      push('toFill', left, next?.times_s.arrived)
      return
    }
    const standing_s = hookedUp !== undefined && filling !== undefined ? filling - hookedUp : 0
    const turn_s = standing_s > OPENING_S ? overlap_s(fillings, stay, hookedUp!, filling!) : 0
    const stop_s = standing_s > OPENING_S ? standing_s - turn_s : 0
    if (hookedUp !== undefined) {
      fillWaits_s.push(wait_s + turn_s)
      stops_s.push(stop_s)
    }
    push('fillPosition', arrived, hookedUp, before_s - (standing_s > OPENING_S ? 0 : standing_s))
    push('fill', filling, full)
    push('fillClear', full, left)
    push('toDump', left, next?.times_s.arrived)
  })
  const lastLoad = log.loads.at(-1)
  if (lastLoad && stays.at(-1)?.place === 'dump' && stays.at(-1)?.times_s.empty === undefined) stages.dump.push(lastLoad.took_s)
  const gone_s = leftFor_s(log, stays, end_s) === undefined ? undefined : stays.findLast(({ times_s }) => times_s.empty !== undefined)?.times_s.empty
  // What still went on at the end of the log took at least until then.
  const still = stillAt(stays.at(-1)!)
  if (still && gone_s === undefined) {
    const { since_s, stage, waits } = still
    const least_s = end_s - since_s
    if (waits) (waits === 'dump' ? dumpWaits_s : fillWaits_s).push(least_s)
    else stages[stage].push(Math.max(log.usual[stage], least_s))
  }
  const first = stays[0]!
  return {
    id: log.tender.id, arrive_s: Math.max(0, first.times_s.arrived ?? first.times_s.dumping ?? 0),
    ...(gone_s !== undefined && { gone_s }),
    dumpIndex: usualSite(spec, log, stays, 'dump'), fillIndex: usualSite(spec, log, stays, 'fill'),
    stages_s: stages, dumpWaits_s, fillWaits_s, stops_s, loads_gal: log.loads.map(({ whole_gal }) => whole_gal),
  }
}

/** When a tender left that should have been seen again since. */
function leftFor_s({ usual }: TenderLog, stays: readonly Stay[], end_s: number): number | undefined {
  const last = stays.at(-1)
  const left_s = last?.times_s.left
  if (left_s === undefined) return undefined
  return end_s - left_s > GONE_FACTOR * (last?.place === 'dump' ? usual.toFill : usual.toDump) + GONE_BESIDE_S ? left_s : undefined
}

/** What a tender was at when it was last seen: waiting, or a stage of its round. */
function stillAt({ place, times_s: { arrived, dumping, hookedUp, filling, full, empty, left } }: Stay): { since_s: number; stage: TripStage; waits?: PlaceKind } | undefined {
  if (left !== undefined) return { since_s: left, stage: place === 'dump' ? 'toFill' : 'toDump' }
  if (place === 'dump') {
    if (empty !== undefined) return { since_s: empty, stage: 'dumpClear' }
    // A load that was not done is counted where loads are.
    return dumping === undefined && arrived !== undefined ? { since_s: arrived, stage: 'dumpPosition', waits: 'dump' } : undefined
  }
  if (full !== undefined) return { since_s: full, stage: 'fillClear' }
  if (filling !== undefined) return { since_s: filling, stage: 'fill' }
  const since_s = hookedUp ?? arrived
  return since_s === undefined ? undefined : { since_s, stage: 'fillPosition', waits: 'fill' }
}

function usualSite(spec: ShuttleSpec, log: TenderLog, stays: readonly Stay[], place: PlaceKind): number {
  const counts = new Map<number, number>()
  for (const stay of stays) if (stay.place === place) counts.set(siteIndex(spec, log, stay), (counts.get(siteIndex(spec, log, stay)) ?? 0) + 1)
  const planned = spec.tenders.find(({ id }) => id === log.tender.id)
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? (place === 'dump' ? planned?.dumpIndex : planned?.fillIndex) ?? 0
}

/** Part of a time in which somebody else was being filled there. */
function overlap_s(fillings: readonly Filling[], stay: Stay, from_s: number, upTo_s: number): number {
  const site = fillings.find((one) => one.stay === stay)?.site
  const others = fillings.filter((one) => one.stay !== stay && one.site === site && one.from_s < upTo_s && one.upTo_s > from_s).sort((a, b) => a.from_s - b.from_s)
  let covered_s = 0
  let reached_s = from_s
  for (const one of others) {
    covered_s += Math.max(0, Math.min(upTo_s, one.upTo_s) - Math.max(reached_s, one.from_s))
    reached_s = Math.max(reached_s, Math.min(upTo_s, one.upTo_s))
  }
  return covered_s
}
