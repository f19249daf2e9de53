import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compileShuttle, runShuttle, type Balance, type ShuttleSpec } from '@/lib/shuttle'
import { anySpec } from './spec-arbitrary'

// A shorter or longer look by environment.
const RUNS = Number(process.env.SHUTTLE_BALANCE_RUNS ?? 10000)

const volumeOf = ({ initial_gal, drawn_gal }: Balance): number => Math.max(1, initial_gal + drawn_gal)

function expectBalanced(spec: ShuttleSpec, demand: 'planned' | 'open' | number): void {
  const { balance, dumps, fills, tenders } = runShuttle(compileShuttle(spec), { demand })
  expect(Math.abs(balance.error_gal)).toBeLessThan(1e-6 * volumeOf(balance))
  for (const part of [balance.delivered_gal, balance.stored_gal, balance.inTransit_gal, balance.spilled_gal, balance.drawn_gal]) {
    expect(part).toBeGreaterThanOrEqual(-1e-6)
  }
  dumps.forEach(({ level_gal, front_gal = 0 }, d) => {
    expect(level_gal).toBeGreaterThan(-1e-6)
    expect(front_gal).toBeGreaterThan(-1e-6)
    expect(front_gal).toBeLessThan((spec.dumps[d]!.front?.capacity_gal ?? 0) + 1e-5)
    if (demand !== 'open') expect(level_gal).toBeLessThan(spec.dumps[d]!.capacity_gal + 1e-5)
  })
  fills.forEach(({ drawn_gal }, f) => {
    const { usable_gal, inflow_gpm } = spec.fills[f]!
    if (usable_gal !== undefined) expect(drawn_gal).toBeLessThan(usable_gal + ((inflow_gpm ?? 0) * spec.horizon_s) / 60 + 1e-5)
  })
  tenders.forEach(({ busyShare }) => {
    expect(busyShare).toBeGreaterThan(-1e-9)
    expect(busyShare).toBeLessThan(1 + 1e-9)
  })
}

describe('water', () => {
  test('none appears and none vanishes, whatever the layout', () => {
    fc.assert(fc.property(anySpec, fc.constantFrom<'planned' | 'open' | number>('planned', 'open', 150, 700), expectBalanced), { numRuns: RUNS, seed: 4711 })
  })
})
