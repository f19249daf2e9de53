import { describe, expect, test } from 'vitest'
import { compilePlan, supplyChart } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

const tank = (id: string) => ({ id, name: id, kind: 'portableTank', capacity_gal: 3000 })
const chained = (changes: Readonly<Record<string, unknown>> = {}) => compilePlan(smallBundle({
  'district.equipment': [tank('a'), tank('b')], 'plan.dumpSites.0.portableTankIds': ['a', 'b'], 'plan.dumpSites.0.tankLink': 'jetSiphon', ...changes,
}))

describe('tanks joined by a jet siphon', () => {
  test('are drawn one under the other, the front one first, each within its own lip', () => {
    const compiled = chained()
    const { tanks } = supplyChart(compiled)!
    expect(tanks.map(({ isFront }) => isFront ?? false)).toEqual([true, false])
    for (const { capacity_gal, levels } of tanks) {
      expect(Math.max(...levels.map(({ level_gal }) => level_gal))).toBeGreaterThan(0)
      for (const { level_gal } of levels) {
        expect(level_gal).toBeGreaterThanOrEqual(-1e-6)
        expect(level_gal).toBeLessThanOrEqual(capacity_gal + 1e-6)
      }
    }
  })

  test('hand over what leaves the front: its level falls at the transfer rate while nobody dumps', () => {
    const { spec } = chained()
    const { transfer_gpm } = spec!.dumps[0]!.front!
    const [front] = supplyChart(chained())!.tanks
    const falls = front!.levels.flatMap(({ time_s, level_gal }, k) => {
      const next = front!.levels[k + 1]
      return next && next.level_gal < level_gal ? [(level_gal - next.level_gal) / ((next.time_s - time_s) / 60)] : []
    })
    expect(falls.length).toBeGreaterThan(0)
    for (const fall of falls) expect(fall).toBeLessThanOrEqual(transfer_gpm + 1e-6)
    expect(Math.max(...falls)).toBeCloseTo(transfer_gpm, 3)
  })

  test('without one there is a single tank to draw', () => {
    expect(supplyChart(chained({ 'plan.dumpSites.0.tankLink': 'drains' }))!.tanks).toHaveLength(1)
  })

  test('the drive water of one re-prime comes out of the booster tank', () => {
    const booster = (link: string, reprime_s: number) => chained({ 'plan.dumpSites.0.tankLink': link, 'plan.dumpSites.0.reprime_s': reprime_s, 'plan.firstDueId': undefined, 'district.apparatus.1.tank_gal': 1000 }).spec!.dumps[0]!.booster_gal
    const [short, long] = [booster('jetSiphon', 60), booster('jetSiphon', 120)]
    expect(booster('drains', 60)).toBe(1000)
    expect(1000 - long).toBeCloseTo(2 * (1000 - short), 6)
    expect(short).toBeLessThan(1000)
  })
})
