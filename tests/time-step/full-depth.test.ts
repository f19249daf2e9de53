import { describe, expect, test } from 'vitest'
import { compileShuttle, runShuttle } from '@/lib/shuttle'
import type { ShuttleSpec } from '@/lib/shuttle/spec'
import { difference } from './compare'
import { fullDepthSpecs, parts, type Part } from './full-depth-specs'
import { stepThrough } from './one-second-model'

const LAYOUTS = 24
const isWithin = (share: number): boolean => Math.abs(share) <= 0.01

/** Layouts in which the two models differ by more than 1 %, each of which must close with smaller steps. */
function apart(specs: readonly ShuttleSpec[], name: string): number {
  const rows = specs.map((spec, k) => ({ k, ...difference(spec) })).filter(({ deliveredShare, hauledShare }) => !isWithin(deliveredShare) || !isWithin(hauledShare))
  for (const { k, deliveredShare, hauledShare, losses } of rows) {
    const finer = difference(specs[k]!, 0.05)
    process.stdout.write(`${name}, layout ${k}: delivered ${(100 * deliveredShare).toFixed(2)} %, hauled ${(100 * hauledShare).toFixed(2)} % apart with steps of 1 s,`
      + ` ${(100 * finer.deliveredShare).toFixed(2)} % and ${(100 * finer.hauledShare).toFixed(2)} % with 0.05 s; drafts lost ${losses}\n`)
    expect(isWithin(finer.deliveredShare)).toBe(true)
    expect(isWithin(finer.hauledShare)).toBe(true)
  }
  process.stdout.write(`${name}: ${specs.length - rows.length} of ${specs.length} layouts within 1 %\n`)
  return rows.length
}

// Where bays or tanks take little, tenders queue close together, and a second may turn round who comes first; with steps
// of 0.05 s the order is that of the events, and nothing is left of the difference.
describe('events and one-second steps agree within 1 % on delivered and hauled volume, or with smaller steps, with', () => {
  test.each(parts.map((part) => [part] as const))('%s', (part: Part) => {
    expect(apart(fullDepthSpecs(LAYOUTS, (one) => one === part), part)).toBeLessThanOrEqual(LAYOUTS / 6)
  })

  test('any of these together', () => {
    expect(apart(fullDepthSpecs(2 * LAYOUTS, (_, chance) => chance < 0.4, 20240815), 'together')).toBeLessThanOrEqual((2 * LAYOUTS) / 6)
  })
})

// Were a part of no weight in these layouts, agreement would say nothing of it.
describe('the steps feel', () => {
  const without = (spec: ShuttleSpec): ShuttleSpec => ({
    ...spec,
    fills: spec.fills.map(({ bayAfter_s: _later, flowingBayCount: _turns, ...fill }) => fill),
    dumps: spec.dumps.map(({ positionAfter_s: _later, front: _front, startsFull: _full, intakeLimit_gpm: _limit, leak_gpm: _leak, ...dump }) => dump),
    tenders: spec.tenders.map(({ rest: _rest, lanesToFill: _there, lanesToDump: _back, ...tender }) => tender),
  })
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
  const bySteps = (spec: ShuttleSpec): readonly number[] => [
    stepThrough(spec, { flow: spec.demand.stages[0]!.flow_gpm, lastsAfterReady: 7200 }).delivered,
    sum(stepThrough(spec, { lastsAfterReady: 7200 }).brought),
  ]
  const byEvents = (spec: ShuttleSpec): readonly number[] => {
    const scenario = compileShuttle(spec)
    return [
      runShuttle(scenario, { demand: spec.demand.stages[0]!.flow_gpm, afterReady_s: 7200 }).delivered_gal,
      sum(runShuttle(scenario, { demand: 'open', afterReady_s: 7200 }).dumps.map(({ received_gal }) => received_gal)),
    ]
  }
  const isOther = (a: readonly number[], b: readonly number[]): boolean => a.some((value, k) => Math.abs(value / b[k]! - 1) > 0.001)

  test.each(parts.map((part) => [part] as const))('%s: left out, another volume is moved, by the events too', (part: Part) => {
    const isFelt = (spec: ShuttleSpec): boolean => isOther(bySteps(without(spec)), bySteps(spec)) && isOther(byEvents(without(spec)), byEvents(spec))
    expect(fullDepthSpecs(LAYOUTS, (one) => one === part).some(isFelt)).toBe(true)
  })
})
