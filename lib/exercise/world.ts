import { issue, type Issue } from '../issue'
import { applyEdit, type Bundle, type EditableDocument, type Change } from '../plan'
import type { ShuttleSpec } from '../shuttle'
import { compilePlan } from '../supply'
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
  const conditions: Conditions = { out: [], late_s: {}, sent_s: {}, fillShare: {}, leak_gpm: {}, layShare: {}, demand: [], ways: {} }
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
    const planned = plannedOf(bundle)
    return Array.isArray(planned) ? planned : madeWorld(bundle, planned, sentAt(world.conditions, world.spec, planned, at_s))
  }
  const missing = missingFrom(world, change)
  if (missing !== undefined) return [issue('exercise-names-nothing', 'block', [missing])]
  const conditions = withCondition(world, change, at_s)
  return conditions === world.conditions ? world : madeWorld(world.bundle, world.planned, conditions)
}

function plannedOf(bundle: Bundle): ShuttleSpec | Issue[] {
  const { spec, issues } = compilePlan(bundle)
  return spec ? { ...spec, afterReady_s: LONGEST_S, horizon_s: LONGEST_S } : issues.filter(({ severity }) => severity === 'block')
}

function madeWorld(bundle: Bundle, planned: ShuttleSpec, conditions: Conditions): World | Issue[] {
  const spec = underConditions(planned, conditions)
  return spec.tenders.length + (spec.feeds?.length ?? 0) > 0 ? { bundle, planned, conditions, spec } : [issue('no-tender-left', 'block', [bundle.plan.id])]
}

function changedBundle(bundle: Bundle, { edits, legs = [] }: Extract<Change, { kind: 'plan' }>): Bundle | Issue[] {
  let { plan, district } = bundle
  for (const { doc, body } of edits) {
    const applied = applyEdit((doc === 'plan' ? plan : district) as EditableDocument, body)
    if ('code' in applied) return [applied]
    if (doc === 'plan') plan = applied.doc as Bundle['plan']
    else district = applied.doc as Bundle['district']
  }
  const known = new Set(legs.map(({ key }) => key))
  return { ...bundle, plan, district, legs: [...bundle.legs.filter(({ key }) => !known.has(key)), ...legs] }
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
    // These two happen to the water, not to the world.
    case 'sourceLow':
    case 'tankTips':
      return conditions
  }
}

/** Id that a change names and the shuttle does not have. */
function missingFrom({ bundle, spec }: World, change: Exclude<Change, { kind: 'plan' }>): string | undefined {
  const isIn = (list: readonly { readonly id: string }[] | undefined, id: string | undefined) => id === undefined || (list ?? []).some((item) => item.id === id)
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
