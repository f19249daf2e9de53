import { describe, expect, test } from 'vitest'
import { compileShuttle, flowUsingStored, hauledCapacity, runShuttle, sustainableFlow } from '@/lib/shuttle'
import { randomSpecs } from '../../time-step/random-specs'
import { dumpSite, fillSite, layout, tender } from './layout'

const four = [0, 1, 2, 3].map((i) => tender({ id: `T${i}`, arrive_s: 100 + 60 * i }))

describe('hauled capacity', () => {
  test('is loads over rounds: four tenders of 1,000 gal in 14 min', () => {
    const { hauledCapacity_gpm, byTender_gpm } = hauledCapacity(compileShuttle(layout({ tenders: four })))
    expect(hauledCapacity_gpm).toBeCloseTo(4000 / 14, 9)
    expect(byTender_gpm).toHaveLength(4)
  })

  test('is given by dump site', () => {
    const dumps = [dumpSite({ id: 'a', demandShare: 0.5 }), dumpSite({ id: 'b', demandShare: 0.5 })]
    const tenders = four.map((one, i) => ({ ...one, dumpIndex: i === 0 ? 1 : 0 }))
    const { byDump_gpm } = hauledCapacity(compileShuttle(layout({ dumps, tenders })))
    expect(byDump_gpm[0]).toBeCloseTo(3000 / 14, 9)
    expect(byDump_gpm[1]).toBeCloseTo(1000 / 14, 9)
  })

  test('counts the time a dry source stops a tender', () => {
    const full = hauledCapacity(compileShuttle(layout())).hauledCapacity_gpm
    const dry = hauledCapacity(compileShuttle(layout({ fills: [fillSite({ usable_gal: 3000 })] }))).hauledCapacity_gpm
    expect(dry).toBeLessThan(0.6 * full)
  })

  test('says who never made a round', () => {
    const haul = hauledCapacity(compileShuttle(layout({ tenders: [tender(), tender({ id: 'T2', arrive_s: 7000 })] })))
    expect(haul.issues.map(({ code, subjectIds }) => [code, ...subjectIds])).toEqual([['tender-makes-no-round', 'T2']])
  })
})

describe('sustainable flow', () => {
  test('is what is hauled when the tanks are large enough', () => {
    const dumps = [dumpSite({ capacity_gal: 6000, pumpReady_s: 700 })]
    const found = sustainableFlow(compileShuttle(layout({ dumps, tenders: four })))
    expect(found.flow_gpm).toBeCloseTo(4000 / 14, 6)
    expect(found.limitedBy).toBe('haul')
    expect(found.issues).toEqual([])
  })

  test('is less when the tank cannot bridge the time between loads', () => {
    // One tender: 60 s of dumping in 840 s. Between loads 780 s of flow must come out of a tank filled to 1,000 gal, down to 200.
    const found = sustainableFlow(compileShuttle(layout({ dumps: [dumpSite({ capacity_gal: 1000 })] })))
    expect(found.flow_gpm).toBeLessThan((800 * 60) / 780 + 0.5)
    expect(['reserve', 'draft']).toContain(found.limitedBy)
  })

  test('is never short, keeps its reserve and is no more than the haul, and one step more is not so', () => {
    for (const spec of randomSpecs(25, (chance) => chance)) {
      const scenario = compileShuttle(spec)
      const { flow_gpm, haul, limitedBy, resolution_gpm } = sustainableFlow(scenario)
      if (flow_gpm === 0) continue
      spec.dumps.forEach(({ demandShare }, d) => expect(flow_gpm * demandShare).toBeLessThanOrEqual(haul.byDump_gpm[d]! + 1e-6))
      const run = runShuttle(scenario, { demand: flow_gpm })
      expect(run.shortSinceReady_s).toBe(0)
      expect(run.dumps.every(({ draftLossCount }) => draftLossCount === 0)).toBe(true)
      if (limitedBy !== 'draft') continue
      const more = runShuttle(scenario, { demand: flow_gpm + resolution_gpm })
      expect(more.dumps.some(({ draftLossCount }) => draftLossCount > 0)).toBe(true)
    }
  })

  test('plain halving finds the same flow where it is monotone', () => {
    let compared = 0
    for (const spec of randomSpecs(25)) {
      const scenario = compileShuttle(spec)
      const found = sustainableFlow(scenario)
      if (found.higher_gpm !== undefined || found.limitedBy !== 'draft') continue
      let [held_gpm, failing_gpm] = [0, found.bound_gpm]
      while (failing_gpm - held_gpm > 0.25) {
        const middle_gpm = (held_gpm + failing_gpm) / 2
        if (runShuttle(scenario, { demand: middle_gpm }).dumps.every(({ draftLossCount }) => draftLossCount === 0)) held_gpm = middle_gpm
        else failing_gpm = middle_gpm
      }
      // Halving looks at the draft alone: it may come out above where the reserve stops the search lower down.
      expect(held_gpm).toBeGreaterThanOrEqual(found.flow_gpm - 1)
      if (Math.abs(held_gpm - found.flow_gpm) <= 1) compared++
    }
    expect(compared).toBeGreaterThan(0)
  })

  test('is nothing when supply is never ready', () => {
    const found = sustainableFlow(compileShuttle(layout({ tenders: [] })))
    expect(found.flow_gpm).toBe(0)
    expect(found.issues.map(({ code }) => code)).toContain('supply-never-ready')
  })

  test('warns where a higher flow is held although a lower one is not', () => {
    const found = randomSpecs(100).map((spec) => sustainableFlow(compileShuttle(spec))).filter(({ higher_gpm }) => higher_gpm !== undefined)
    expect(found.length).toBeGreaterThan(0)
    for (const { flow_gpm, higher_gpm, issues } of found) {
      expect(higher_gpm).toBeGreaterThan(flow_gpm)
      expect(issues.find(({ code }) => code === 'flow-not-monotone')?.values).toMatchObject({ flow_gpm, higher_gpm })
    }
  })
})

describe('flow using stored water', () => {
  test('is more the shorter it must last, and never less than lasts for longer', () => {
    const scenario = compileShuttle(layout({ tenders: four, dumps: [dumpSite({ pumpReady_s: 700 })] }))
    const flows = [600, 1800, 7200].map((duration_s) => flowUsingStored(scenario, duration_s))
    expect(flows[0]!.flow_gpm).toBeGreaterThan(flows[2]!.flow_gpm)
    expect(flows.map(({ duration_s }) => duration_s)).toEqual([600, 1800, 7200])
    expect(flows[0]!.flow_gpm).toBeGreaterThan(sustainableFlow(scenario).flow_gpm)
  })

  test('refuses a duration that is not above 0', () => {
    expect(() => flowUsingStored(compileShuttle(layout()), 0)).toThrow(RangeError)
  })
})
