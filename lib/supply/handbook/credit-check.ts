import { compilePlan, type CompiledPlan } from '../compile-plan'
import { pumpCapacity_gpm } from '../pump-capacity'
import { certificateLine, dispatchLine, stationLine, suctionLine, testedLine, volumeLine } from './credit-facts'
import { creditLine, creditLines, creditRules, RATE_STEP_GPM, type CreditLine, type Verdict } from './credit-rules'
import { holdFlow, type HeldAsk } from './hold-flow'

export type CreditCheck = {
  /** `pass` only when every line passes; `fail` when one fails; else something is not known. */
  readonly verdict: Verdict
  readonly lines: readonly CreditLine[]
  /** First arrival, seconds from dispatch; absent: no engine is named first due. */
  readonly firstArrive_s?: number
  /** Greatest rate, in steps of 10 gpm, that is there 15 min after first arrival and held; absent when the minimum is not. */
  readonly highest_gpm?: number
}

export type CreditOptions = {
  /** Calendar day the tests of pumps are judged on, YYYY-MM-DD; absent: their age is not judged. */
  readonly today?: string
}

/**
 * What a rating bureau asks of hauled water, line by line: an estimate, not a rating.
 *
 * @returns each line passed, failed or not known, with the moment it fails and what is missing
 * @source rating bureau page on alternative supplies, as reproduced (seen); see credit-rules.ts
 */
export function creditCheck(compiled: CompiledPlan, { today }: CreditOptions = {}): CreditCheck {
  const { firstArrive_s } = compiled
  const held = firstArrive_s === undefined ? undefined : holdMinimum(compiled, firstArrive_s)
  const rate = held?.isHeld && firstArrive_s !== undefined ? highestRate(compiled, firstArrive_s) : undefined
  const found = [
    ...flowLines(compiled, held, rate),
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
    ...(rate && { highest_gpm: rate.flow_gpm }),
  }
}

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

function flowLines({ bundle: { plan }, firstArrive_s, issues }: CompiledPlan, held: HeldAsk | undefined, rate: ReturnType<typeof highestRate> | undefined): CreditLine[] {
  if (held === undefined || firstArrive_s === undefined) {
    const isEngineOut = plan.firstDueId !== undefined
    const rest = isEngineOut
      ? { why: 'engine-cannot-reach', subjectIds: [plan.firstDueId ?? plan.id, ...issues.filter(({ severity }) => severity === 'block').flatMap(({ subjectIds }) => subjectIds)] }
      : { why: 'no-engine', missing: [{ itemId: plan.id, field: 'firstDueId' }] }
    return (['start', 'duration', 'higher-rate'] as const).map((code) => creditLine(code, 'unknown', rest))
  }
  const start_s = startAt(firstArrive_s)
  const values = { start_s, end_s: start_s + creditRules.duration_s, higher_s: firstArrive_s + creditRules.higherWithin_s }
  if (held.isHeld) {
    const higher = rate && rate.flow_gpm > creditRules.minimum_gpm
    const next = rate?.next
    return [
      creditLine('start', 'pass', { values }),
      creditLine('duration', 'pass', { values }),
      creditLine('higher-rate', higher ? 'pass' : 'fail', {
        values: { ...values, flow_gpm: rate?.flow_gpm ?? creditRules.minimum_gpm, next_gpm: (rate?.flow_gpm ?? creditRules.minimum_gpm) + RATE_STEP_GPM },
        ...(next && { fails_s: next.short_s, why: next.why, subjectIds: next.subjectIds }),
      }),
    ]
  }
  const failed = { values, fails_s: held.short_s, why: held.why, subjectIds: held.subjectIds }
  const isLate = held.short_s <= start_s
  return [
    creditLine('start', isLate ? 'fail' : 'pass', isLate ? failed : { values }),
    creditLine('duration', 'fail', failed),
    creditLine('higher-rate', 'fail', { ...failed, why: 'minimum-first' }),
  ]
}

/** The same in the drought the sources are planned for; frost and access are for people to judge. */
function allYearLine(compiled: CompiledPlan, held: HeldAsk | undefined): CreditLine {
  const { bundle } = compiled
  const drought = bundle.plan.season === 'drought' ? compiled : compilePlan({ ...bundle, plan: { ...bundle.plan, season: 'drought' } })
  const unsaid = drought.issues.filter(({ code }) => code === 'season-drop-missing').flatMap(({ subjectIds }) => subjectIds)
  if (held === undefined || drought.firstArrive_s === undefined) return creditLine('all-year', 'unknown', { why: 'no-engine' })
  const dry = holdMinimum(drought, drought.firstArrive_s)
  if (!dry.isHeld) return creditLine('all-year', 'fail', { fails_s: dry.short_s, why: held.isHeld ? dry.why : 'minimum-first', subjectIds: dry.subjectIds })
  if (unsaid.length > 0) return creditLine('all-year', 'unknown', { why: 'drop-missing', subjectIds: unsaid, missing: unsaid.map((itemId) => ({ itemId, field: 'droughtDrop_ft' })) })
  return creditLine('all-year', 'pass', {})
}
