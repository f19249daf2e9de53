import { findApparatus, type Bundle } from '../plan'
import type { FillSpec, ShuttleSpec, TenderSpec, WaySpec } from '../shuttle'
import { roundClosures, type Roads } from './closures'

/** What has come over a plan since dispatch; all by id, nothing of it in the plan itself. */
export type Conditions = Roads & {
  /** Tenders that are out of it for good. */
  readonly out: readonly string[]
  /** Later than the plan says, by tender, fill site, dump site or lay. */
  readonly late_s: Readonly<Record<string, number>>
  /** Brought in by a decision at that moment. */
  readonly sent_s: Readonly<Record<string, number>>
  readonly fillShare: Readonly<Record<string, number>>
  readonly leak_gpm: Readonly<Record<string, number>>
  readonly layShare: Readonly<Record<string, number>>
  /** In the order in which they came: a flow in place of what was planned, or more on top. */
  readonly demand: readonly { readonly from_s: number; readonly flow_gpm?: number; readonly add_gpm?: number }[]
  /** Where tenders drive in place of where the plan sends them. */
  readonly ways: Readonly<Record<string, { readonly fillSiteId?: string; readonly dumpSiteId?: string }>>
}

/** A pump that has stopped: nothing for as long as an exercise lasts, and still a number above 0. */
const STOPPED_GPM = 1e-6

/** The spec of a plan as conditions leave it. */
export function underConditions(planned: ShuttleSpec, bundle: Bundle, conditions: Conditions): ShuttleSpec {
  const { out, leak_gpm, layShare } = conditions
  const spec = { ...planned, tenders: roundClosures(planned, bundle, conditions) }
  const extra_s = (id: string) => (conditions.late_s[id] ?? 0) + (conditions.sent_s[id] ?? 0)
  return {
    ...spec,
    fills: spec.fills.map((fill) => atRate({ ...fill, ready_s: fill.ready_s + extra_s(fill.id) }, conditions.fillShare[fill.id] ?? 1)),
    dumps: spec.dumps.map((dump) => ({
      ...dump, ready_s: dump.ready_s + extra_s(dump.id), pumpReady_s: dump.pumpReady_s + extra_s(dump.id),
      ...(leak_gpm[dump.id] !== undefined && { leak_gpm: (dump.leak_gpm ?? 0) + leak_gpm[dump.id]! }),
    })),
    tenders: spec.tenders.filter(({ id }) => !out.includes(id)).map((tender) => sentElsewhere({
      ...tender, ...(tender.arrive_s !== undefined && { arrive_s: tender.arrive_s + extra_s(tender.id) }),
    }, spec, conditions.ways[tender.id])),
    ...(spec.feeds && { feeds: spec.feeds.map((feed) => ({ ...feed, ready_s: feed.ready_s + extra_s(feed.id), flow_gpm: Math.max(STOPPED_GPM, feed.flow_gpm * (layShare[feed.id] ?? 1)) })) }),
    demand: { ...spec.demand, stages: stagesUnder(spec.demand.stages, conditions.demand) },
  }
}

const atRate = (fill: FillSpec, share: number): FillSpec =>
  share === 1 ? fill : { ...fill, bayRate_gpm: fill.bayRate_gpm.map((rate_gpm) => Math.max(STOPPED_GPM, rate_gpm * share)) }

type Sites = { readonly fillSiteId?: string | undefined; readonly dumpSiteId?: string | undefined }

/** The way between the sites a tender is sent to, its own where they are not named, as it or somebody else of the plan drives it; undefined where nobody does. */
export function findWay(spec: ShuttleSpec, tender: TenderSpec | undefined, { fillSiteId, dumpSiteId }: Sites): TenderSpec | WaySpec | undefined {
  if (!tender) return undefined
  const fillIndex = fillSiteId === undefined ? tender.fillIndex : spec.fills.findIndex(({ id }) => id === fillSiteId)
  const dumpIndex = dumpSiteId === undefined ? tender.dumpIndex : spec.dumps.findIndex(({ id }) => id === dumpSiteId)
  return [tender, ...spec.tenders].flatMap((one) => [one, ...(one.ways ?? [])]).find((way) => way.fillIndex === fillIndex && way.dumpIndex === dumpIndex)
}

/** The tender between other sites, in the times that somebody of the plan takes there; its own way where nobody drives that one. */
function sentElsewhere(tender: TenderSpec, spec: ShuttleSpec, to: Sites | undefined): TenderSpec {
  const found = to && findWay(spec, tender, to)
  if (!found) return tender
  const { ways: _ways, lanesToFill: _toFill, lanesToDump: _toDump, ...rest } = tender
  return {
    ...rest, fillIndex: found.fillIndex, dumpIndex: found.dumpIndex, toFill_s: found.toFill_s, toDump_s: found.toDump_s,
    ...(found.lanesToFill && { lanesToFill: found.lanesToFill }), ...(found.lanesToDump && { lanesToDump: found.lanesToDump }),
  }
}

type Stage = { readonly from_s: number; readonly flow_gpm: number }

/** Stages of demand, with what has come over them: each change counts from its moment on, and never below nothing. */
function stagesUnder(stages: readonly Stage[], changes: Conditions['demand']): Stage[] {
  return changes.reduce<readonly Stage[]>((before, { from_s, flow_gpm, add_gpm = 0 }) => {
    const at_gpm = before.findLast((stage) => stage.from_s <= from_s)?.flow_gpm ?? 0
    const earlier = before.filter((stage) => stage.from_s < from_s)
    if (flow_gpm !== undefined) return [...earlier, { from_s, flow_gpm }]
    const raised = (planned_gpm: number) => Math.max(0, planned_gpm + add_gpm)
    return [...earlier, { from_s, flow_gpm: raised(at_gpm) }, ...before.filter((stage) => stage.from_s > from_s).map((stage) => ({ ...stage, flow_gpm: raised(stage.flow_gpm) }))]
  }, stages) as Stage[]
}

/** What a decision brings in is sent when it is made: its times are counted from then. */
export function sentAt(conditions: Conditions, before: ShuttleSpec, after: ShuttleSpec, at_s: number): Conditions {
  const known = new Set([...before.fills, ...before.dumps, ...before.tenders, ...(before.feeds ?? [])].map(({ id }) => id))
  const fresh = [...after.fills, ...after.dumps, ...after.tenders, ...(after.feeds ?? [])].map(({ id }) => id).filter((id) => !known.has(id) && !conditions.out.includes(id))
  return { ...conditions, sent_s: { ...conditions.sent_s, ...Object.fromEntries(fresh.map((id) => [id, at_s])) } }
}

/** A unit comes later than planned: itself as a tender, and the sites that wait for it as their pumper, unless they are at work already. */
export function lateBy(conditions: Conditions, { plan, district }: Bundle, spec: ShuttleSpec, unitId: string, delay_s: number, at_s: number): Conditions {
  if (!findApparatus({ district }, unitId)) return conditions
  const waiting = [
    ...spec.tenders.filter(({ id, arrive_s = Infinity }) => id === unitId && arrive_s > at_s),
    ...spec.fills.filter(({ id, ready_s }) => ready_s > at_s && plan.fillSites.find((site) => site.id === id)?.pumperId === unitId),
    ...spec.dumps.filter(({ id, pumpReady_s }) => pumpReady_s > at_s && plan.dumpSites.find((site) => site.id === id)?.pumperId === unitId),
    ...(spec.feeds ?? []).filter(({ id, ready_s }) => ready_s > at_s && plan.hoseLays?.find((lay) => lay.id === id)?.pumperIds.some((one) => one === unitId)),
  ].map(({ id }) => id)
  return { ...conditions, late_s: { ...conditions.late_s, ...Object.fromEntries(waiting.map((id) => [id, (conditions.late_s[id] ?? 0) + delay_s])) } }
}
