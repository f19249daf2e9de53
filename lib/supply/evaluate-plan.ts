import { isBlocking, issue, type Issue } from '../issue'
import type { Bundle } from '../plan'
import { compileShuttle, flowUsingStored, laterFlows, runShuttle, sustainableFlow, type ShuttleRun } from '../shuttle'
import { bayOrdersOf } from './bay-orders'
import { chainOf } from './chain'
import { compilePlan, type CompiledPlan } from './compile-plan'
import { gapBeforeSupply_s } from './gap-before-supply'
import { laterStarts } from './later-starts'
import { fillPrimingIssues } from './fill-priming'
import { lineToFireIssues } from './line-to-fire'
import { inOrderOfEffect } from './order-issues'
import { dumpSiteResult, fillSiteResult, tenderResult, tenderOut } from './part-results'
import { pumpCapacity_gpm } from './pump-capacity'
import { limitOf, rankLinks } from './rank-links'
import type { SupplyResult } from './result'
import { handFigureOf } from './hand-figure'
import { legResults } from './ways'

export type EvaluateOptions = {
  /** Leaves out the limiting link and the ranking of links, which take a search each, and the time to prime. */
  readonly quick?: boolean
}

/**
 * The answer to a plan: what it sustains, from when, what limits it, with the working behind it.
 *
 * The same bundle gives the same answer everywhere: no road graph, database, clock or chance.
 *
 * @param bundle through `readBundle`
 * @returns the result; when something blocks the answer its figures are null and its issues say why
 */
export function evaluatePlan(bundle: Bundle, options: EvaluateOptions = {}): SupplyResult {
  return evaluateCompiled(compilePlan(bundle), options)
}

/** The same from a plan that is already worked out as far as numbers. */
export function evaluateCompiled(compiled: CompiledPlan, { quick = false }: EvaluateOptions = {}): SupplyResult {
  const { spec, bundle: { plan } } = compiled
  if (!spec) return blockedResult(compiled, compiled.issues)
  const scenario = compileShuttle(spec)
  const planned = runShuttle(scenario)
  const pump_gpm = pumpCapacity_gpm(compiled)
  const found = sustainableFlow(scenario)
  const sustainable_gpm = Math.min(found.flow_gpm, pump_gpm)
  const { haul } = found
  const stored_gpm = Math.min(flowUsingStored(scenario, compiled.duration_s).flow_gpm, pump_gpm)
  const later = laterFlows(scenario, found, laterStarts(compiled))
    .map(({ from_s, flow_gpm, startIds }) => ({ from_s, flow_gpm: Math.min(flow_gpm, pumpCapacity_gpm(compiled, from_s)), layIds: [...startIds] }))
    .filter(({ flow_gpm }) => flow_gpm > sustainable_gpm)
  const links = quick ? [] : rankLinks(spec, sustainable_gpm, pump_gpm)
  const needed_gpm = compiled.demand.needed_gpm ?? null
  const { firstArrive_s } = compiled

  const issues = [...withoutDoubles(compiled.issues, ({ values }) => JSON.stringify(values)), ...withoutDoubles([...planned.issues, ...found.issues])]
  issues.push(...linesToFire(compiled, needed_gpm ?? sustainable_gpm))
  if (!quick) issues.push(...compiled.fills.flatMap((fill) => fillPrimingIssues(compiled.bundle, fill)))
  if (found.flow_gpm > pump_gpm) issues.push(issue('dump-pump-limits', 'note', compiled.dumps.map(({ site }) => site.id), { pump_gpm }))
  if (needed_gpm !== null && sustainable_gpm < needed_gpm) issues.push(issue('short-of-need', 'warn', [plan.id], { flow_gpm: sustainable_gpm, needed_gpm }))
  return {
    ...head(compiled),
    sustainable_gpm, stored_gpm, needed_gpm,
    hauledCapacity_gpm: haul.hauledCapacity_gpm,
    hand_gpm: handFigureOf(compiled),
    firstArrival_s: firstArrive_s ?? null,
    firstWater_s: planned.firstWater_s ?? null,
    tankEmpty_s: planned.engineEmpty_s ?? null,
    supplyReady_s: planned.supplyReady_s ?? null,
    gap_s: gapBeforeSupply_s(spec, planned) ?? null,
    short_s: compiled.demand.stages.length > 0 ? planned.shortSinceArrival_s : null,
    limitingLink: limitOf(links),
    links,
    chain: chainOf(compiled),
    waterBalance_gal: planned.balance,
    ...parts(compiled, planned, quick ? undefined : bayOrdersOf(spec, sustainable_gpm, pump_gpm)),
    firstToMeasure: null,
    ...(later.length > 0 && { laterFlows: later }),
    issues: inOrderOfEffect(issues, { sustainable_gpm, links, tenderCount: compiled.tenders.length }),
  }
}

/** Of each dump site, for its part of what hose lays do not bring. */
function linesToFire({ bundle, dumps, lays }: CompiledPlan, needed_gpm: number): Issue[] {
  const left_gpm = needed_gpm - pumpCapacity_gpm({ dumps: [], lays }, Infinity)
  return dumps.flatMap((dump) => (left_gpm * dump.spec.demandShare > 0 ? lineToFireIssues(bundle, dump, left_gpm * dump.spec.demandShare) : []))
}

function head({ bundle: { plan }, duration_s }: CompiledPlan) {
  return { format: 'millrace-result' as const, version: 1 as const, planId: plan.id, planName: plan.name, duration_s }
}

function parts(compiled: CompiledPlan, run: ShuttleRun | undefined, bayOrders?: ReturnType<typeof bayOrdersOf>): Pick<SupplyResult, 'sites' | 'tenders' | 'lays' | 'legs' | 'unmeasured'> {
  const { fills, dumps, tenders, lays, bundle: { plan }, ways, ledger } = compiled
  return {
    sites: [...fills.map((fill) => fillSiteResult(fill, run, bayOrders?.get(fill.site.id) ?? null)), ...dumps.map((dump) => dumpSiteResult(dump, compiled.demand.needed_gpm, run))],
    tenders: plan.tenders.map((task) => {
      const resolved = tenders.find(({ tender }) => tender.id === task.tenderId)
      return resolved ? tenderResult(resolved, fills, run) : tenderOut(task)
    }),
    ...(lays.length > 0 && { lays: lays.map(({ lay, flow_gpm, start_s, ready_s, pumperIds }) => ({ id: lay.id, toId: lay.toId, flow_gpm, start_s, ready_s, pumperIds: [...pumperIds], fed_gal: run?.feeds?.find(({ id }) => id === lay.id)?.fed_gal ?? null })) }),
    legs: legResults(ways),
    unmeasured: [...ledger.assumptions.values()],
  }
}

function blockedResult(compiled: CompiledPlan, issues: readonly Issue[]): SupplyResult {
  if (!isBlocking(issues)) throw new RangeError('issues hold nothing that blocks, must hold the reason why there is no answer')
  return {
    ...head(compiled),
    sustainable_gpm: null, stored_gpm: null, hauledCapacity_gpm: null, hand_gpm: null,
    needed_gpm: compiled.demand.needed_gpm ?? null,
    firstArrival_s: compiled.firstArrive_s ?? null,
    firstWater_s: null, tankEmpty_s: null, supplyReady_s: null, gap_s: null, short_s: null,
    limitingLink: null, links: [], chain: [], waterBalance_gal: null,
    ...parts(compiled, undefined),
    firstToMeasure: null,
    issues: inOrderOfEffect(issues, { sustainable_gpm: null, links: [], tenderCount: 0 }),
  }
}

/** @param also what else tells two issues of one code about the same items apart */
function withoutDoubles(issues: readonly Issue[], also: (one: Issue) => string = () => ''): Issue[] {
  const seen = new Set<string>()
  return issues.filter((one) => {
    const key = `${one.code} ${one.subjectIds.join()} ${also(one)}`
    return seen.has(key) ? false : seen.add(key)
  })
}
