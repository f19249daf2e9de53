import { describe, expect, test } from 'vitest'
import { demoLogs } from '@/app/_demo/documents/demo-logs'
import { causes, reviewEvents } from '@/lib/review'
import { demoBundle } from '@/tests/fixtures/demo-roads'

const logs = demoLogs(new Map([['plan-gander-hill', demoBundle('gander-hill')], ['plan-yarrow-bank', demoBundle('yarrow-bank')]]))

describe('the drills of the demo district', () => {
  test.each(logs.map(({ log, events }) => [log.name, log, events] as const))('%s: causes add up, and what is left is within what the log is sure of', (_, log, events) => {
    const { difference, loads } = reviewEvents(log, events)
    const { planned_gpm, achieved_gpm, parts, unexplained_gpm, bound_gpm } = difference!
    expect(loads.length).toBeGreaterThan(10)
    expect(parts).toHaveLength(causes.length)
    expect(parts.reduce((sum, { gpm }) => sum + gpm, 0) + unexplained_gpm).toBeCloseTo(achieved_gpm - planned_gpm, 6)
    expect(Math.abs(unexplained_gpm)).toBeLessThanOrEqual(bound_gpm)
  })

  test('the one that was noted badly says more of what it assumed, missing, doubled and out of order', () => {
    const [clean, messy] = logs.map(({ log, events }) => reviewEvents(log, events).assumptions)
    expect(messy!.length).toBeGreaterThan(clean!.length)
    expect(new Set(messy!.map(({ kind }) => kind)).size).toBeGreaterThan(1)
    process.stdout.write(`${[...new Set(messy!.map(({ kind }) => kind))].map((kind) => `${kind} ${messy!.filter((one) => one.kind === kind).length}`).join(', ')}\n`)
  })

  // The first stage of that plan asks for 180 gpm only: its drill read that and had it.
  test('what a stage asked for and got is no failure of a flow that was asked for later', () => {
    const { steady, planned_gpm, expected_gpm } = reviewEvents(logs[0]!.log, logs[0]!.events)
    expect(steady).toMatchObject({ verdict: 'unknown', lowest_gpm: 180, untested: { asked_gpm: 180 } })
    expect(expected_gpm!).toBeGreaterThan(planned_gpm!)
  })
})
