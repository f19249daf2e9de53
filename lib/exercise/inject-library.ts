import { compilePlan } from '../supply'
import type { Bundle, Change, Inject } from '../plan'
import { lawfulRange, type Range } from './range'
import type { RoadClosure } from './road-closures'

/** Kinds of trouble that an exercise is made of, from the mild to the grave. */
export type Trouble =
  | 'sourceLow' | 'tankLeak' | 'strainerClogs' | 'unitLate' | 'radioMisheard' | 'roadClosed' | 'tenderOut' | 'tankTips' | 'primerFails'
  | 'fillPumperStops' | 'hoseBursts' | 'layBursts' | 'moreDemand'

/** How hard each is to come through: counts in the drawing of a set. Judgement, no source. */
export const troubleWeight: Readonly<Record<Trouble, 1 | 2 | 3>> = {
  sourceLow: 1, tankLeak: 1, strainerClogs: 1, unitLate: 1, radioMisheard: 2, roadClosed: 2, tenderOut: 2, tankTips: 2, primerFails: 3, fillPumperStops: 3, hoseBursts: 3, layBursts: 2, moreDemand: 3,
}

/** A trouble as it could come over a plan: whom it strikes, and what it does. */
export type PossibleTrouble = {
  readonly trouble: Trouble
  /** What it strikes, then what it sends there. */
  readonly subjectIds: readonly string[]
  readonly change: Change
  /** Time within which it means something, after dispatch. */
  readonly when: Range
  /** Somebody has no way round and stops: too much for a drawn set, and said where it is added by hand. */
  readonly stuckIds?: readonly string[]
}

/** Figures of the library: what a middling one of its kind is like. Judgement, no source; each can be changed in the exercise. */
const troubleFigures = { leak_gpm: 120, cloggedShare: 0.4, late_s: 600, lowShare: 0.25, more_gpm: 250 } as const

/**
 * Every trouble that could come over a plan, on each thing it could strike.
 *
 * @param closures roads that could be closed; without them none is
 * @returns none when the plan cannot be played
 */
export function possibleTroubles(bundle: Bundle, closures: readonly RoadClosure[] = []): PossibleTrouble[] {
  const { spec } = compilePlan(bundle)
  if (!spec) return []
  const { plan } = bundle
  const ready_s = Math.max(0, ...spec.dumps.map(({ pumpReady_s }) => pumpReady_s))
  const later = lawfulRange(ready_s, ready_s + (spec.afterReady_s ?? 7200) / 2)
  const found: PossibleTrouble[] = []
  const add = (trouble: Trouble, subjectIds: readonly string[], change: Change, when: Range = later, stuckIds: readonly string[] = []) =>
    found.push({ trouble, subjectIds, change, when, ...(stuckIds.length > 0 && { stuckIds }) })
  for (const { id, usable_gal, inflow_gpm = 0, bayRate_gpm, bayCount, ready_s: fill_s } of spec.fills) {
    const site = plan.fillSites.find((one) => one.id === id)
    // What a stream brings at any moment is more than is drawn: less of it stored changes nothing.
    if (usable_gal !== undefined && inflow_gpm < (bayRate_gpm[bayCount - 1] ?? 0) * bayCount) add('sourceLow', [id], { kind: 'sourceLow', fillSiteId: id, leftShare: troubleFigures.lowShare })
    add('strainerClogs', [id], { kind: 'fillRate', fillSiteId: id, rateShare: troubleFigures.cloggedShare, fault: 'strainer' })
    add('fillPumperStops', [site?.pumperId ?? id, id], { kind: 'fillRate', fillSiteId: id, rateShare: 0, fault: 'pump' })
    // A length of a fill line: its bay stands still.
    add('hoseBursts', [id], { kind: 'fillRate', fillSiteId: id, rateShare: (bayCount - 1) / bayCount, fault: 'hose' })
    // The prime is sought when the pumper has been set: it fails then, or at a later restart.
    add('primerFails', [site?.pumperId ?? id, id], { kind: 'fillRate', fillSiteId: id, rateShare: 0, fault: 'primer' }, lawfulRange(0, fill_s))
    if (site?.pumperId) add('unitLate', [site.pumperId, id], { kind: 'unitLate', unitId: site.pumperId, delay_s: troubleFigures.late_s }, lawfulRange(0, fill_s * 0.8))
  }
  for (const { id, ready_s: dump_s } of spec.dumps) {
    add('tankLeak', [id], { kind: 'tankLeak', dumpSiteId: id, leak_gpm: troubleFigures.leak_gpm })
    if (plan.dumpSites.find((one) => one.id === id)?.nurseId === undefined) add('tankTips', [id], { kind: 'tankTips', dumpSiteId: id, lostShare: 1 }, lawfulRange(dump_s, later.to_s))
  }
  for (const tender of spec.tenders) {
    add('tenderOut', [tender.id], { kind: 'tenderOut', tenderId: tender.id })
    if (tender.arrive_s !== undefined) add('unitLate', [tender.id], { kind: 'unitLate', unitId: tender.id, delay_s: troubleFigures.late_s }, lawfulRange(0, tender.arrive_s * 0.8))
    for (const other of wrongWays(spec, tender)) add('radioMisheard', [tender.id, other.siteId], other.change)
  }
  closures.forEach(({ fromId, toId, point, detours, stuckIds }, k) => {
    add('roadClosed', [fromId, toId], { kind: 'roadClosed', roadId: `road-${k + 1}`, point, detours: [...detours] }, later, stuckIds)
  })
  for (const { id } of spec.feeds ?? []) add('layBursts', [id], { kind: 'layRate', layId: id, rateShare: 0 })
  add('moreDemand', [plan.id], { kind: 'moreDemand', add_gpm: troubleFigures.more_gpm })
  return found.filter(({ when }) => when.to_s > when.from_s)
}

type Spec = NonNullable<ReturnType<typeof compilePlan>['spec']>

/** Sites that somebody of the plan drives and this tender does not: where it goes when an order is misheard. */
function wrongWays(spec: Spec, tender: Spec['tenders'][number]): { siteId: string; change: Change }[] {
  return spec.tenders.flatMap((other) => {
    const fillSiteId = spec.fills[other.fillIndex]?.id
    const isWrong = other.fillIndex !== tender.fillIndex && other.dumpIndex === tender.dumpIndex
    return isWrong && fillSiteId !== undefined ? [{ siteId: fillSiteId, change: { kind: 'sendTender' as const, tenderId: tender.id, fillSiteId } }] : []
  }).filter(({ siteId }, i, all) => all.findIndex((one) => one.siteId === siteId) === i)
}

/** A possible trouble as an inject of an exercise. A closed road is called as its trouble is. */
export const injectFrom = ({ change }: PossibleTrouble, id: string, title: string, at_s: number): Inject =>
  ({ id, title, trigger: { kind: 'time', at_s }, change: change.kind === 'roadClosed' ? { ...change, roadId: id, name: title } : change })
