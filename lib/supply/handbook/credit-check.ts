import { compileShuttle, sustainableFlow } from '../../shuttle'
import { compilePlan, type CompiledPlan } from '../compile-plan'
import { pumpCapacity_gpm } from '../pump-capacity'
import { certificateLine, dispatchLine, stationLine, suctionLine, testedLine, unmeasuredWater, volumeLine, type Unmeasured } from './credit-facts'
import { creditLine, creditLines, creditRules, RATE_STEP_GPM, type CreditLine, type Verdict } from './credit-rules'
import { holdFlow, type HeldAsk } from './hold-flow'

export type CreditCheck = {
  /** `pass` only when every line passes; `fail` when one fails; else something is not known. */
  readonly verdict: Verdict
  readonly lines: readonly CreditLine[]
  /** First arrival, seconds from dispatch; absent: no engine is named first due. */
  readonly firstArrive_s?: number
  /** Greatest rate, in steps of 10 gpm, that is there 15 min after first arrival, held, and no more than what is compared; absent when the minimum is not held. */
  readonly highest_gpm?: number
  /** The steady flow that the minimum and the higher rate are held against; absent: the plan has no answer. */
  readonly compared?: Compared
}

/** What a plan gives steadily: the dependable flow where it is known, else the sustained one with nothing in doubt. */
export type Compared = { readonly by: 'dependable' | 'sustained'; readonly flow_gpm: number }

export type CreditOptions = {
  /** Calendar day the tests of pumps are judged on, YYYY-MM-DD; absent: their age is not judged. */
  readonly today?: string
  /** Of the plan as it is; absent: not known yet. */
  readonly dependable_gpm?: number
}

/**
 * What a rating bureau asks of hauled water, line by line: an estimate, not a rating.
 *
 * @returns each line passed, failed or not known, with the moment it fails and what is missing
 * @source rating bureau page on alternative supplies, as reproduced (seen); see credit-rules.ts
 */
export function creditCheck(compiled: CompiledPlan, { today, dependable_gpm }: CreditOptions = {}): CreditCheck {
  const { firstArrive_s } = compiled
  const held = firstArrive_s === undefined ? undefined : holdMinimum(compiled, firstArrive_s)
  const rate = held?.isHeld && firstArrive_s !== undefined ? highestRate(compiled, firstArrive_s) : undefined
  const compared = comparedFlow(compiled, dependable_gpm)
  const found = [
    ...flowLines(compiled, held, rate, compared),
    volumeLine(compiled),
    allYearLine(compiled, held),
    dispatchLine(compiled, held, (without) => isHeldBy(without)),
    testedLine(compiled, today),
    certificateLine(compiled),
    stationLine(compiled),
    suctionLine(compiled),
  ]
  const lines = creditLines.flatMap((code) => found.filter((line) => line.code === code))
  const has = (verdict: Verdict) => lines.some((line) => line.verdict === verdict)
  return {
    verdict: has('fail') ? 'fail' : has('unknown') ? 'unknown' : 'pass', lines,
    ...(firstArrive_s !== undefined && { firstArrive_s }),
    ...(rate && { highest_gpm: Math.min(rate.flow_gpm, steadyStep_gpm(compared)) }),
    ...(compared && { compared }),
  }
}

function comparedFlow(compiled: CompiledPlan, dependable_gpm: number | undefined): Compared | undefined {
  if (!compiled.spec) return undefined
  if (dependable_gpm !== undefined) return { by: 'dependable', flow_gpm: dependable_gpm }
  return { by: 'sustained', flow_gpm: Math.min(sustainableFlow(compileShuttle(compiled.spec)).flow_gpm, pumpCapacity_gpm(compiled)) }
}

/** The greatest step that is no more than what is compared. */
const steadyStep_gpm = (compared: Compared | undefined): number => Math.floor((compared?.flow_gpm ?? Infinity) / RATE_STEP_GPM + 1e-9) * RATE_STEP_GPM

const isSteady = (compared: Compared | undefined): boolean => compared === undefined || compared.flow_gpm >= creditRules.minimum_gpm

const startAt = (firstArrive_s: number) => firstArrive_s + creditRules.startWithin_s

function holdMinimum(compiled: CompiledPlan, firstArrive_s: number): HeldAsk {
  const from_s = startAt(firstArrive_s)
  return holdFlow(compiled, [{ from_s, flow_gpm: creditRules.minimum_gpm }], from_s + creditRules.duration_s)
}

function isHeldBy(compiled: CompiledPlan): boolean {
  return compiled.firstArrive_s !== undefined && holdMinimum(compiled, compiled.firstArrive_s).isHeld
}

/** The greatest rate such that it and every lower step is held; the first that is not, with its moment. */
function highestRate(compiled: CompiledPlan, firstArrive_s: number): { flow_gpm: number; next: Exclude<HeldAsk, { isHeld: true }> | undefined } {
  const from_s = startAt(firstArrive_s)
  const higher_s = firstArrive_s + creditRules.higherWithin_s
  let flow_gpm: number = creditRules.minimum_gpm
  const most_gpm = pumpCapacity_gpm(compiled) + RATE_STEP_GPM
  while (flow_gpm <= most_gpm) {
    const held = holdFlow(compiled, [{ from_s, flow_gpm: creditRules.minimum_gpm }, { from_s: higher_s, flow_gpm: flow_gpm + RATE_STEP_GPM }], from_s + creditRules.duration_s)
    if (!held.isHeld) return { flow_gpm, next: held }
    flow_gpm += RATE_STEP_GPM
  }
  return { flow_gpm, next: undefined }
}

function flowLines(compiled: CompiledPlan, held: HeldAsk | undefined, rate: ReturnType<typeof highestRate> | undefined, compared: Compared | undefined): CreditLine[] {
  const { bundle: { plan }, firstArrive_s, issues } = compiled
  if (held === undefined || firstArrive_s === undefined) {
    const isEngineOut = plan.firstDueId !== undefined
    const rest = isEngineOut
      ? { why: 'engine-cannot-reach', subjectIds: [plan.firstDueId ?? plan.id, ...issues.filter(({ severity }) => severity === 'block').flatMap(({ subjectIds }) => subjectIds)] }
      : { why: 'no-engine', missing: [{ itemId: plan.id, field: 'firstDueId' }] }
    return (['start', 'duration', 'higher-rate'] as const).map((code) => creditLine(code, 'unknown', rest))
  }
  const start_s = startAt(firstArrive_s)
  const values = { start_s, end_s: start_s + creditRules.duration_s, higher_s: firstArrive_s + creditRules.higherWithin_s, ...(compared && { compared_gpm: compared.flow_gpm }) }
  if (held.isHeld) return [creditLine('start', 'pass', { values }), durationLine(compiled, values, compared), higherLine(values, rate, compared)]
  const failed = { values, fails_s: held.short_s, why: held.why, subjectIds: held.subjectIds }
  const isLate = held.short_s <= start_s
  return [
    creditLine('start', isLate ? 'fail' : 'pass', isLate ? failed : { values }),
    creditLine('duration', 'fail', failed),
    creditLine('higher-rate', 'fail', { ...failed, why: 'minimum-first' }),
  ]
}

type Values = CreditLine['values']

/** The run holds the minimum: it is steady if what is compared holds it too, and known if the water is. */
function durationLine(compiled: CompiledPlan, values: Values, compared: Compared | undefined): CreditLine {
  if (!isSteady(compared)) return creditLine('duration', 'fail', { values, why: 'less-steady' })
  const unknown = unmeasuredWater(compiled)
  return unknown.length > 0 ? creditLine('duration', 'unknown', { values, why: 'source-unknown', ...unmeasured(unknown) }) : creditLine('duration', 'pass', { values })
}

/** The higher rate counts as far as what is compared reaches; what the run alone would hold stands beside it. */
function higherLine(values: Values, rate: ReturnType<typeof highestRate> | undefined, compared: Compared | undefined): CreditLine {
  const run_gpm = rate?.flow_gpm ?? creditRules.minimum_gpm
  const flow_gpm = Math.min(run_gpm, steadyStep_gpm(compared))
  const all = { ...values, flow_gpm, run_gpm, next_gpm: run_gpm + RATE_STEP_GPM }
  const isHigher = flow_gpm > creditRules.minimum_gpm
  if (flow_gpm < run_gpm) return creditLine('higher-rate', isHigher ? 'pass' : 'fail', { values: all, why: isHigher ? 'steady' : 'less-steady' })
  return creditLine('higher-rate', isHigher ? 'pass' : 'fail', {
    values: all, ...(rate?.next && { fails_s: rate.next.short_s, why: rate.next.why, subjectIds: rate.next.subjectIds }),
  })
}

const unmeasured = (unknown: readonly Unmeasured[]) => ({ subjectIds: unknown.map(({ itemId }) => itemId), missing: unknown })

/** The same in the drought the sources are planned for; frost and access are for people to judge. */
function allYearLine(compiled: CompiledPlan, held: HeldAsk | undefined): CreditLine {
  const { bundle } = compiled
  const drought = bundle.plan.season === 'drought' ? compiled : compilePlan({ ...bundle, plan: { ...bundle.plan, season: 'drought' } })
  if (held === undefined || drought.firstArrive_s === undefined) return creditLine('all-year', 'unknown', { why: bundle.plan.firstDueId === undefined ? 'no-engine' : 'engine-cannot-reach' })
  const dry = holdMinimum(drought, drought.firstArrive_s)
  if (!dry.isHeld) return creditLine('all-year', 'fail', { fails_s: dry.short_s, why: held.isHeld ? dry.why : 'minimum-first', subjectIds: dry.subjectIds })
  const compared = comparedFlow(drought, undefined)
  if (!isSteady(compared)) return creditLine('all-year', 'fail', { why: 'less-steady', values: { ...(compared && { compared_gpm: compared.flow_gpm }) } })
  const about = (...codes: string[]) => [...new Set(drought.issues.filter(({ code }) => codes.includes(code)).flatMap(({ subjectIds }) => subjectIds))]
  const unsaid = about('season-drop-missing')
  if (unsaid.length > 0) return creditLine('all-year', 'unknown', { why: 'drop-missing', subjectIds: unsaid, missing: unsaid.map((itemId) => ({ itemId, field: 'droughtDrop_ft' })) })
  const unknown = unmeasuredWater(drought)
  if (unknown.length > 0) return creditLine('all-year', 'unknown', { why: 'source-unknown', ...unmeasured(unknown) })
  const usual = about('season-inflow-usual', 'season-volume-usual')
  if (usual.length > 0) return creditLine('all-year', 'unknown', { why: 'usual-water', subjectIds: usual })
  return creditLine('all-year', 'pass', {})
}
