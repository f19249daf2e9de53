import { compileShuttle, hauledCapacity, recordShuttle, roundOf, sustainableFlow, type HeldFlow } from '../../shuttle'
import type { CompiledPlan } from '../compile-plan'
import { defaults } from '../defaults'
import type { Way } from '../legs'
import { pumpCapacity_gpm } from '../pump-capacity'
import type { ResolvedTender } from '../tender'
import { isWay } from '../ways'
import { annexRound, ratingRound, type HandbookRound } from './handbook-round'
import { notesOfRound, roundParts, type RoundNote, type RoundPart } from './round-differences'
import { roundFlow_gpm, simulatedRound, type SimulatedRound } from './simulated-round'

/** One tender by both forms, by the plan's own times with nobody in the way, and as simulated. */
export type TenderComparison = {
  readonly id: string
  readonly tank_gal: number
  readonly toFill_mi: number
  readonly toDump_mi: number
  readonly rating: HandbookRound
  readonly annex: HandbookRound
  readonly own: HandbookRound
  readonly simulated?: SimulatedRound
  /** What takes form B's round to the simulated one: they add up to the difference. */
  readonly parts: readonly RoundPart[]
  readonly notes: readonly RoundNote[]
}

/** What takes the hand figure to the simulated flow, in this order; each changes the figure before it. */
type ComparisonCode =
  | 'start-stop' | 'load' | 'road' | 'dump-tail' | 'top-up' | 'bay-shared' | 'dumping' | 'chosen-ways' | 'wait-fill' | 'wait-dump'
  | 'wait-road' | 'rest' | 'away' | 'site-shares' | 'tanks' | 'pump'
export type ComparisonStep = { readonly code: ComparisonCode; readonly change_gpm: number; readonly figure_gpm: number }

export type HandbookComparison = {
  readonly tenders: readonly TenderComparison[]
  readonly average_mph: number
  readonly rating_gpm: number
  readonly annex_gpm: number
  /** By the plan's own times, nobody in the way: the plan's hand figure. */
  readonly own_gpm: number
  readonly hauled_gpm: number
  readonly sustainable_gpm: number
  /** What keeps the simulated flow from being higher. */
  readonly limitedBy: HeldFlow['limitedBy'] | 'pump'
  readonly steps: readonly ComparisonStep[]
}

/**
 * The hauled-water forms computed for a plan, term by term, beside the simulation's own terms, and the way
 * from the one to the other: which difference takes how many gallons a minute.
 *
 * Both forms are given the plan's own times at the sites as if everything ran at its main rate (no slow last
 * part, the bay alone) and find travel by their formula from the plan's road miles. The steps change one thing
 * for all tenders at once, in a fixed order; another order would share the change out differently, the ends stay.
 *
 * @returns undefined when something blocks the answer
 */
export function compareHandbook(compiled: CompiledPlan): HandbookComparison | undefined {
  const { spec, tenders: resolved } = compiled
  if (!spec) return undefined
  const scenario = compileShuttle(spec)
  const haul = hauledCapacity(scenario)
  const { segments, run } = recordShuttle(scenario, { demand: 'open' })
  const average_mph = compiled.bundle.district.average_mph ?? defaults.average_mph.value
  const tenders = resolved.map((tender, i) => {
    const given_gal = tender.spec.usable_gal * (1 - (tender.spec.spillShare ?? 0))
    const simulated = simulatedRound(haul.measured[i], segments[i] ?? [], given_gal, haul.byTender_gpm[i] ?? 0)
    const isSourceDry = run.fills.some(({ id, sourceEmpty_s }) => id === tender.fillSiteId && sourceEmpty_s > 0)
    return compareTender(compiled, tender, average_mph, simulated, isSourceDry)
  })

  const held = sustainableFlow(scenario)
  const pump_gpm = pumpCapacity_gpm(compiled)
  const shared_gpm = spec.dumps.reduce((least, { demandShare }, d) => (demandShare > 0 ? Math.min(least, (haul.byDump_gpm[d] ?? 0) / demandShare) : least), haul.hauledCapacity_gpm)
  const sustainable_gpm = Math.min(held.flow_gpm, pump_gpm)
  const sum = (of: (tender: TenderComparison) => number) => tenders.reduce((total, tender) => total + of(tender), 0)
  const rating_gpm = sum(({ rating }) => rating.flow_gpm)
  const figures: [ComparisonStep['code'], number][] = [
    ['start-stop', sum(({ annex }) => annex.flow_gpm)],
    ...stepFigures(resolved, tenders),
    ['away', haul.hauledCapacity_gpm], ['site-shares', shared_gpm], ['tanks', held.flow_gpm], ['pump', sustainable_gpm],
  ]
  return {
    tenders, average_mph, rating_gpm,
    annex_gpm: sum(({ annex }) => annex.flow_gpm),
    own_gpm: sum(({ own }) => own.flow_gpm),
    hauled_gpm: haul.hauledCapacity_gpm,
    sustainable_gpm,
    limitedBy: held.flow_gpm > pump_gpm ? 'pump' : held.limitedBy,
    steps: figures.map(([code, figure_gpm], at) => ({ code, figure_gpm, change_gpm: figure_gpm - (figures[at - 1]?.[1] ?? rating_gpm) })),
  }
}

function compareTender(compiled: CompiledPlan, resolved: ResolvedTender, average_mph: number, simulated: SimulatedRound | undefined, isSourceDry: boolean): TenderComparison {
  const { tender, spec, fillSiteId, dumpSiteId } = resolved
  const toFill = wayBetween(compiled, tender.id, dumpSiteId, fillSiteId)
  const toDump = wayBetween(compiled, tender.id, fillSiteId, dumpSiteId)
  const rate_gpm = compiled.fills.find(({ site }) => site.id === fillSiteId)?.bayRate_gpm[0] ?? 0
  const main = mainTimes(resolved, rate_gpm)
  const alone = roundOf(spec, rate_gpm)
  const inputs = {
    tank_gal: tender.tank_gal ?? spec.usable_gal, average_mph, ...main,
    toFill_mi: toFill?.distance_mi ?? 0, toDump_mi: toDump?.distance_mi ?? 0,
  }
  const own: HandbookRound = {
    counted_gal: spec.usable_gal, toFill_s: spec.toFill_s, toDump_s: spec.toDump_s,
    dumpSite_s: alone.dump_s + spec.dumpPosition_s + spec.dumpClear_s,
    fillSite_s: alone.fill_s + spec.fillPosition_s + spec.fillClear_s,
    round_s: alone.cycle_s,
    flow_gpm: roundFlow_gpm(spec.usable_gal, alone.cycle_s),
  }
  const annex = annexRound(inputs)
  const ways = { empty: toFill, loaded: toDump }
  return {
    id: tender.id, tank_gal: inputs.tank_gal, toFill_mi: inputs.toFill_mi, toDump_mi: inputs.toDump_mi,
    rating: ratingRound(inputs), annex, own,
    ...(simulated && { simulated }),
    parts: roundParts(annex, own, simulated, ways, isSourceDry),
    notes: notesOfRound(annex, own, simulated, ways),
  }
}

function wayBetween({ ways }: CompiledPlan, unitId: string, fromId: string, toId: string): Way | undefined {
  const way = ways.find(unitId, fromId, toId)
  return isWay(way) ? way : undefined
}

/** Times at the sites at the main rates: as a form takes them, with no slow last part. */
function mainTimes({ spec }: ResolvedTender, bayRate_gpm: number): { fillSite_s: number; dumpSite_s: number } {
  const plain = roundOf({ ...spec, topUpShare: 0, dumpRate_gpm: spec.dumpRate_gpm.slice(0, 1) }, bayRate_gpm)
  return { fillSite_s: plain.fill_s + spec.fillPosition_s + spec.fillClear_s, dumpSite_s: plain.dump_s + spec.dumpPosition_s + spec.dumpClear_s }
}

/** The figure after each step from the annex to the rounds as simulated. */
function stepFigures(resolved: readonly ResolvedTender[], tenders: readonly TenderComparison[]): [ComparisonStep['code'], number][] {
  const steps: [ComparisonStep['code'], (tender: TenderComparison) => number][] = [
    ['load', () => 0],
    ['road', ({ annex, own }) => own.toFill_s + own.toDump_s - annex.toFill_s - annex.toDump_s],
    ['dump-tail', ({ annex, own }) => own.dumpSite_s - annex.dumpSite_s],
    ['top-up', ({ annex, own }) => own.fillSite_s - annex.fillSite_s],
    ['bay-shared', ({ own, simulated }) => (simulated ? simulated.fill_s + simulated.fillHandling_s - own.fillSite_s : 0)],
    ['dumping', ({ own, simulated }) => (simulated ? simulated.dump_s + simulated.dumpHandling_s - own.dumpSite_s : 0)],
    ['chosen-ways', ({ own, simulated }) => (simulated ? simulated.toFill_s + simulated.toDump_s - own.toFill_s - own.toDump_s : 0)],
    ['wait-fill', ({ simulated }) => simulated?.waitToFill_s ?? 0],
    ['wait-dump', ({ simulated }) => simulated?.waitToDump_s ?? 0],
    ['wait-road', ({ simulated }) => simulated?.waitAtRoad_s ?? 0],
    ['rest', ({ simulated }) => simulated?.rest_s ?? 0],
  ]
  const rounds_s = tenders.map(({ annex }) => annex.round_s)
  return steps.map(([code, more_s]) => {
    tenders.forEach((tender, i) => { rounds_s[i]! += more_s(tender) })
    return [code, rounds_s.reduce((sum, round_s, i) => sum + roundFlow_gpm(resolved[i]?.spec.usable_gal ?? 0, round_s), 0)]
  })
}
