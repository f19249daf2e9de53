import { issue, type Issue } from '../issue'
import { applyEdit, type Bundle, type EditableDocument, type Change, type Plan } from '../plan'
import type { ShuttleSpec } from '../shuttle'
import { compilePlan } from '../supply'
import { lateAfterOpening, lateRound } from './closed-late'
import { findWay, lateBy, sentAt, underConditions, type Conditions } from './conditions'

/** What is so at a moment of an exercise: the plan as it now stands, and what has come over it. */
export type World = {
  readonly bundle: Bundle
  /** The plan by itself, compiled once for each change of it. */
  readonly planned: ShuttleSpec
  readonly conditions: Conditions
  /** The plan as the conditions leave it. */
  readonly spec: ShuttleSpec
}

/** An exercise goes on until somebody ends it. */
const LONGEST_S = 172_800

/** The plan at dispatch, or the issues for which it cannot be played. */
export const worldOf = (bundle: Bundle): World | Issue[] => {
  const conditions: Conditions = { out: [], late_s: {}, sent_s: {}, fillShare: {}, leak_gpm: {}, layShare: {}, demand: [], ways: {}, closed: [], detours: [] }
  const planned = plannedOf(bundle)
  return Array.isArray(planned) ? planned : madeWorld(bundle, planned, conditions)
}

/**
 * The world after a change at a moment.
 *
 * What a change brings in is sent at that moment: its times, counted from dispatch by the plan, are counted from there.
 *
 * @returns the same world where the change is one of the water alone; the issues for which the change cannot be: it names what is not there, or leaves nothing to run
 */
export function changedWorld(world: World, change: Change, at_s: number): World | Issue[] {
  if (change.kind === 'plan') {
    const bundle = changedBundle(world.bundle, change)
    if (Array.isArray(bundle)) return bundle
    const planned = plannedOf(bundle, change.edits.flatMap(({ doc, body }) => (doc === 'plan' && body.kind === 'addItem' ? [body.item.id] : [])))
    if (Array.isArray(planned)) return planned
    const conditions = sentAt(world.conditions, world.spec, planned, at_s)
    return madeWorld(bundle, planned, {
      ...conditions, ways: waysStill(world.bundle.plan, bundle.plan, conditions.ways), detours: [...conditions.detours, ...(change.detours ?? [])],
    })
  }
  const missing = missingFrom(world, change)
  if (missing !== undefined) return [issue('exercise-names-nothing', 'block', [missing])]
  const conditions = withCondition(world, change, at_s)
  return conditions === world.conditions ? world : madeWorld(world.bundle, world.planned, conditions)
}

/** @param added ids of items that must take part: what is brought in and stays out of it would be a decision that does nothing */
function plannedOf(bundle: Bundle, added: readonly string[] = []): ShuttleSpec | Issue[] {
  const { spec, issues } = compilePlan(bundle)
  const idle = spec ? idleOf(spec, bundle, added) : []
  if (idle.length > 0) return [...idle.map((id) => issue('exercise-not-counted', 'block', [id])), ...issues.filter(({ subjectIds, code }) => code !== 'lay-not-counted' && subjectIds.some((id) => idle.includes(id)))]
  return spec ? { ...spec, afterReady_s: LONGEST_S, horizon_s: LONGEST_S } : issues.filter(({ severity }) => severity === 'block')
}

/** Tenders, sites and lays of the plan, of those named, that take no part in its run. */
function idleOf(spec: ShuttleSpec, { plan }: Bundle, ids: readonly string[]): string[] {
  const runs = new Set([...spec.fills, ...spec.dumps, ...spec.tenders, ...(spec.feeds ?? [])].map(({ id }) => id))
  const isOwnSupply = (toId: string) => plan.fillSites.some((site) => site.id === toId && site.pumperId === undefined)
  return ids.filter((id) => {
    const task = plan.tenders.find((one) => one.id === id)
    if (task) return !runs.has(task.tenderId)
    const lay = plan.hoseLays?.find((one) => one.id === id)
    if (lay) return lay.isLeftOut !== true && !runs.has(id) && !isOwnSupply(lay.toId)
    return [...plan.fillSites, ...plan.dumpSites].some((site) => site.id === id) && !runs.has(id)
  })
}

function madeWorld(bundle: Bundle, planned: ShuttleSpec, conditions: Conditions): World | Issue[] {
  const spec = underConditions(planned, bundle, conditions)
  return spec.tenders.length + (spec.feeds?.length ?? 0) > 0 ? { bundle, planned, conditions, spec } : [issue('no-tender-left', 'block', [bundle.plan.id])]
}

/** Where somebody was sent by word holds until the plan itself gives it other sites. */
function waysStill(before: Plan, after: Plan, ways: Conditions['ways']): Conditions['ways'] {
  const sitesOf = (plan: Plan, id: string) => plan.tenders.filter(({ tenderId }) => tenderId === id).map(({ fillSiteId, dumpSiteId }) => `${fillSiteId} ${dumpSiteId}`).join()
  return Object.fromEntries(Object.entries(ways).filter(([id]) => sitesOf(before, id) === sitesOf(after, id)))
}

function changedBundle(bundle: Bundle, { edits, legs = [], heights = [] }: Extract<Change, { kind: 'plan' }>): Bundle | Issue[] {
  let { plan, district } = bundle
  for (const { doc, body } of edits) {
    const applied = applyEdit((doc === 'plan' ? plan : district) as EditableDocument, body)
    if ('code' in applied) return [applied]
    if (doc === 'plan') plan = applied.doc as Bundle['plan']
    else district = applied.doc as Bundle['district']
  }
  const known = new Set(legs.map(({ key }) => key))
  const layHeights = [...(bundle.layHeights ?? []).filter(({ key }) => !heights.some((one) => one.key === key)), ...heights]
  return { ...bundle, plan, district, legs: [...bundle.legs.filter(({ key }) => !known.has(key)), ...legs], ...(layHeights.length > 0 && { layHeights }) }
}

function withCondition({ bundle, conditions, spec }: World, change: Exclude<Change, { kind: 'plan' }>, at_s: number): Conditions {
  switch (change.kind) {
    case 'tenderOut':
      return { ...conditions, out: [...conditions.out, change.tenderId] }
    case 'unitLate':
      return lateBy(conditions, bundle, spec, change.unitId, change.delay_s, at_s)
    case 'fillRate':
      return { ...conditions, fillShare: { ...conditions.fillShare, [change.fillSiteId]: change.rateShare } }
    case 'tankLeak':
      return { ...conditions, leak_gpm: { ...conditions.leak_gpm, [change.dumpSiteId]: change.leak_gpm } }
    case 'layRate':
      return { ...conditions, layShare: { ...conditions.layShare, [change.layId]: change.rateShare } }
    case 'moreDemand':
      return { ...conditions, demand: [...conditions.demand, { from_s: at_s, add_gpm: change.add_gpm }] }
    case 'demand':
      return { ...conditions, demand: [...conditions.demand, { from_s: at_s, flow_gpm: change.flow_gpm }] }
    case 'sendTender':
      return { ...conditions, ways: { ...conditions.ways, [change.tenderId]: { ...conditions.ways[change.tenderId], ...(change.fillSiteId && { fillSiteId: change.fillSiteId }), ...(change.dumpSiteId && { dumpSiteId: change.dumpSiteId }) } } }
    case 'roadClosed': {
      const roads = { ...conditions, closed: conditions.closed.filter(({ id }) => id !== change.roadId), detours: [...conditions.detours, ...change.detours] }
      const closure = { id: change.roadId, point: change.point }
      return { ...roads, late_s: lateRound(roads, bundle, spec, closure, at_s), closed: [...roads.closed, closure] }
    }
    case 'roadOpened': {
      const roads = { ...conditions, closed: conditions.closed.filter(({ id }) => id !== change.roadId) }
      return { ...roads, late_s: lateAfterOpening(roads, bundle, spec, at_s) }
    }
    // These two happen to the water, not to the world.
    case 'sourceLow':
    case 'tankTips':
      return conditions
  }
}

/** Id that a change names and the shuttle does not have; undefined where all is there. */
export function missingFrom({ bundle, spec, conditions }: World, change: Exclude<Change, { kind: 'plan' }>): string | undefined {
  const isIn = (list: readonly { readonly id: string }[] | undefined, id: string | undefined) => id === undefined || (list ?? []).some((item) => item.id === id)
  if (change.kind === 'roadOpened' && !isIn(conditions.closed, change.roadId)) return change.roadId
  if ('tenderId' in change && !isIn(spec.tenders, change.tenderId)) return change.tenderId
  if ('unitId' in change && !isIn(bundle.district.apparatus, change.unitId)) return change.unitId
  if ('fillSiteId' in change && !isIn(spec.fills, change.fillSiteId)) return change.fillSiteId
  if ('dumpSiteId' in change && !isIn(spec.dumps, change.dumpSiteId)) return change.dumpSiteId
  if ('layId' in change && !isIn(spec.feeds, change.layId)) return change.layId
  if (change.kind === 'sendTender' && !findWay(spec, spec.tenders.find(({ id }) => id === change.tenderId), change)) return change.fillSiteId ?? change.dumpSiteId
  return undefined
}

/** True when the plan can be played at all. */
export const isWorld = (made: World | Issue[]): made is World => !Array.isArray(made)
