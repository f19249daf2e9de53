import { roundOf, type FeedSpec, type FillSpec } from '../shuttle'
import { SECONDS_PER_MINUTE } from '../units'
import type { CompiledPlan } from './compile-plan'
import type { ChainPart } from './result'
import type { ResolvedTender } from './tender'

/**
 * The chain from source to fire ground as five capacities side by side: what each part would
 * pass if the others were no hindrance. The narrowest bounds the flow from above; queues and
 * small tanks take more off, which only the simulation knows.
 *
 *   source        most the pumpers can draft at the pressure their fill lines need
 *   fill          bays · load / time in the bay, all bays busy
 *   road          Σ load / round: every tender on its way with nobody before it
 *   dump          positions · load / time in the position
 *   fire ground   most the dump-site pumpers can send on
 *
 * What a hose lay brings counts in every part that it goes round, where it stands by the time the dump sites are set; one that comes
 * later is no part of the flow held from supply ready on. Where no water is named, what the source could give is not known.
 */
export function chainOf({ fills, dumps, tenders, spec }: Pick<CompiledPlan, 'fills' | 'dumps' | 'tenders' | 'spec'>): ChainPart[] {
  const rateAt = ({ fillSiteId }: ResolvedTender, busyCount?: number) => {
    const rates = fills.find(({ site }) => site.id === fillSiteId)?.bayRate_gpm ?? []
    return rates[(busyCount ?? rates.length) - 1] ?? 0
  }
  const usedFills = fills.filter(({ site }) => tenders.some(({ fillSiteId }) => fillSiteId === site.id))
  const usedDumps = dumps.filter(({ site }) => tenders.some(({ dumpSiteId }) => dumpSiteId === site.id))
  const source = usedFills.map(({ draft, water, bayRate_gpm }) =>
    Math.min(draft?.flow_gpm ?? water.hydrant_gpm ?? (bayRate_gpm.at(-1) ?? 0) * bayRate_gpm.length, water.usable_gal === 0 ? (water.inflow_gpm ?? 0) : Infinity))
  const fill = usedFills.map(({ site, bayRate_gpm }) => bayRate_gpm.length * meanRate(tenders.filter(({ fillSiteId }) => fillSiteId === site.id), (tender) => {
    const { fill_s } = roundOf(tender.spec, rateAt(tender))
    return fill_s + tender.spec.fillPosition_s + tender.spec.fillClear_s
  }))
  const dump = usedDumps.map(({ site, spec }) => spec.positionCount * meanRate(tenders.filter(({ dumpSiteId }) => dumpSiteId === site.id), (tender) => {
    const { dump_s } = roundOf(tender.spec, rateAt(tender))
    return dump_s + tender.spec.dumpPosition_s + tender.spec.dumpClear_s
  }))
  const road = tenders.map((tender) => tender.spec.usable_gal / (roundOf(tender.spec, rateAt(tender, 1)).cycle_s / SECONDS_PER_MINUTE))
  const set_s = Math.max(0, ...dumps.map((one) => one.spec.pumpReady_s))
  const feeds = (spec?.feeds ?? []).filter(({ ready_s }) => ready_s <= set_s)
  const by = (goes: (feed: (typeof feeds)[number]) => boolean) => sum(feeds.filter(goes).map(({ flow_gpm }) => flow_gpm))
  const passesRoad_gpm = by(({ fillIndex }) => fillIndex === undefined)
  const passesPumper_gpm = by(({ dumpIndex, fillIndex }) => dumpIndex === undefined && fillIndex === undefined)
  const all_gpm = by(() => true)
  const isNamed = usedFills.every(({ issues }) => !issues.some(({ code }) => code === 'fill-water-unnamed'))
  const twice_gpm = countedTwice_gpm(usedFills.map(({ source: water }, i) => ({ sourceId: water?.id as string | undefined, gpm: source[i] ?? 0 })), feeds, spec?.fills ?? [])
  return [
    { part: 'source', capacity_gpm: isNamed ? sum(source) + all_gpm - twice_gpm : null, subjectIds: usedFills.map(({ site }) => site.id) },
    { part: 'fill', capacity_gpm: sum(fill) + all_gpm, subjectIds: usedFills.map(({ site }) => site.id) },
    { part: 'road', capacity_gpm: sum(road) + passesRoad_gpm, subjectIds: tenders.map(({ tender }) => tender.id) },
    { part: 'dump', capacity_gpm: sum(dump) + passesRoad_gpm, subjectIds: usedDumps.map(({ site }) => site.id) },
    { part: 'fireGround', capacity_gpm: sum(usedDumps.map(({ pump_gpm }) => pump_gpm)) + passesPumper_gpm, subjectIds: usedDumps.map(({ site }) => site.id) },
  ]
}

/** What fill sites and lays on one stream would draw together beyond what it brings. */
function countedTwice_gpm(fills: readonly { readonly sourceId: string | undefined; readonly gpm: number }[], feeds: readonly FeedSpec[], specs: readonly FillSpec[]): number {
  const streams = new Map([...specs, ...feeds].flatMap(({ sourceId, usable_gal, inflow_gpm = 0 }) => (sourceId !== undefined && usable_gal === 0 ? [[sourceId, inflow_gpm] as const] : [])))
  return sum([...streams].map(([id, inflow_gpm]) => {
    const users = [...fills, ...feeds.map(({ sourceId, flow_gpm }) => ({ sourceId, gpm: flow_gpm }))].filter(({ sourceId }) => sourceId === id)
    return users.length > 1 ? Math.max(0, sum(users.map(({ gpm }) => gpm)) - inflow_gpm) : 0
  }))
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** Water a place passes when the tenders that use it come one behind the other, each as often as the others. */
function meanRate(tenders: readonly ResolvedTender[], stay_s: (tender: ResolvedTender) => number): number {
  const time_s = sum(tenders.map(stay_s))
  return time_s > 0 ? sum(tenders.map(({ spec }) => spec.usable_gal)) / (time_s / SECONDS_PER_MINUTE) : 0
}
