import { describe, expect, it } from 'vitest'
import { compareHandbook, compilePlan, evaluatePlan, type HandbookComparison } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'
import { shippedBundle } from '@/tests/unit/demo/shipped-demo'

const compared = (changes: Parameters<typeof smallBundle>[0] = {}): HandbookComparison => {
  const found = compareHandbook(compilePlan(smallBundle(changes)))
  if (!found) throw new Error('the plan is blocked')
  return found
}

describe('the forms beside the simulation', () => {
  it('follow from numbers a person can add up', () => {
    // 2,000 gal tanks, 2 miles each way: T = 0.65 + 1.7 · 2 = 4.05 min. Both ends: 1,800 gal at 1,000 gpm, 108 s each;
    // 75 + 30 s at the dump, 60 + 30 s at the fill.
    const { tenders: [tender], annex_gpm, rating_gpm } = compared()
    expect(tender?.annex.toFill_s).toBeCloseTo(60 * 4.05, 9)
    expect(tender?.annex.dumpSite_s).toBeCloseTo(108 + 105, 4)
    expect(tender?.annex.fillSite_s).toBeCloseTo(108 + 90, 4)
    expect(annex_gpm).toBeCloseTo((2 * 1800) / ((2 * 60 * 4.05 + 411) / 60), 4)
    expect(rating_gpm).toBeCloseTo((2 * 1800) / ((2 * 60 * 4.05 - 39 + 411) / 60), 4)
  })

  it('leave only the slow last tenth of the filling and the rounded slope where nobody is in the way', () => {
    const { tenders: [tender], own_gpm, hauled_gpm, steps } = compared()
    expect(hauled_gpm).toBeCloseTo(own_gpm, 6)
    const [first, ...more] = tender?.parts.filter(({ more_s }) => Math.abs(more_s) >= 5) ?? []
    expect([first?.code, more]).toEqual(['top-up', []])
    expect(first?.more_s).toBeCloseTo(10.8, 4)
    expect(steps.find(({ code }) => code === 'wait-fill')?.change_gpm).toBeCloseTo(0, 9)
  })

  it('name the queue where four tenders share one slow bay', () => {
    const tenders = ['t1', 't2', 't3', 't4']
    const found = compared({
      'district.apparatus': [
        ...smallBundle().district.apparatus.slice(0, 2),
        ...tenders.map((id) => ({ id, name: id, kind: 'tender', stationId: 'st1', tank_gal: 2000, fillLimit_gpm: 300 })),
      ],
      'plan.tenders': tenders.map((tenderId) => ({ id: `k-${tenderId}`, tenderId })),
    })
    expect(found.tenders.some(({ parts }) => parts.some(({ code, more_s }) => code === 'wait-fill' && more_s > 1))).toBe(true)
    expect(found.steps.find(({ code }) => code === 'wait-fill')?.change_gpm).toBeLessThan(-10)
    expect(found.hauled_gpm).toBeLessThan(found.own_gpm)
  })

  it('say the load where a tender is not counted with nine tenths', () => {
    const { tenders: [tender] } = compared({ 'district.apparatus.2.usableShare': 0.95 })
    expect(tender?.notes).toContain('load')
    expect(tender?.annex.counted_gal).toBe(1800)
    expect(tender?.own.counted_gal).toBe(1900)
  })

  it('have nothing to say of a plan that is blocked', () => {
    expect(compareHandbook(compilePlan(smallBundle({ 'plan.tenders': [] })))).toBeUndefined()
  })
})

describe.each(['plan-yarrow-bank', 'plan-gander-hill', 'plan-school'])('%s', (id) => {
  const bundle = shippedBundle(id)
  const result = evaluatePlan(bundle, { quick: true })
  const found = compareHandbook(compilePlan(bundle))

  it('begins and ends at the figures of the answer', () => {
    expect(found?.own_gpm).toBeCloseTo(result.hand_gpm ?? NaN, 9)
    expect(found?.hauled_gpm).toBe(result.hauledCapacity_gpm)
    expect(found?.sustainable_gpm).toBe(result.sustainable_gpm)
    expect(found?.steps.find(({ code }) => code === 'top-up')?.figure_gpm).toBeCloseTo(found?.own_gpm ?? NaN, 6)
    expect(found?.steps.at(-1)?.figure_gpm).toBe(result.sustainable_gpm)
  })

  it('loses no gallon on the way: the steps add up', () => {
    const sum = (found?.steps ?? []).reduce((total, { change_gpm }) => total + change_gpm, found?.rating_gpm ?? 0)
    expect(sum).toBeCloseTo(result.sustainable_gpm ?? NaN, 6)
    // Nothing is left to call by another name: what a tender brings is its load over the parts of its round.
    expect(Math.abs(found?.steps.find(({ code }) => code === 'away')?.change_gpm ?? NaN)).toBeLessThan(1e-6)
  })

  it('has reasons that add up to what the simulation is longer, none twice', () => {
    for (const { annex, simulated, parts } of found?.tenders ?? []) {
      expect(parts.reduce((sum, { more_s }) => sum + more_s, 0)).toBeCloseTo((simulated?.round_s ?? NaN) - annex.round_s, 6)
      expect(new Set(parts.map(({ code }) => code)).size).toBe(parts.length)
    }
  })

  it('has parts that add up to each simulated round', () => {
    for (const { simulated: round } of found?.tenders ?? []) {
      if (!round) throw new Error('every tender of the demo makes rounds')
      const parts = round.waitToDump_s + round.dumpHandling_s + round.dump_s + round.toFill_s + round.waitToFill_s + round.fillHandling_s + round.fill_s + round.toDump_s + round.waitAtRoad_s + round.rest_s + round.away_s
      expect(parts).toBeCloseTo(round.round_s, 6)
      expect((round.counted_gal / round.round_s) * 60).toBeCloseTo(round.flow_gpm, 6)
    }
  })
})
