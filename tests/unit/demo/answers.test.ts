import { expect, test } from 'vitest'
import { evaluatePlan, findHazardFlow_gpm, legUses } from '@/lib/supply'
import { shippedBundle, shippedDistrict, shippedPlans } from './shipped-demo'

const answerOf = (planId: string) => {
  const bundle = shippedBundle(planId)
  return { bundle, result: evaluatePlan(bundle) }
}

const wayOf = (bundle: ReturnType<typeof shippedBundle>, apparatusId: string, fromId: string, toId: string): readonly string[] => {
  const use = legUses(bundle).find((one) => one.apparatusId === apparatusId && one.fromId === fromId && one.toId === toId)
  const leg = bundle.legs.find(({ key }) => key === use?.key)
  if (!leg || leg.by === 'none') throw new RangeError(`${apparatusId} has no way from ${fromId} to ${toId}`)
  return leg.roads ?? []
}

test('every way of every plan is in its bundle, found on the roads', () => {
  for (const { id } of shippedPlans()) {
    const bundle = shippedBundle(id)
    const found = new Map(bundle.legs.map((leg) => [leg.key, leg.by]))
    expect(legUses(bundle).map(({ key }) => found.get(key))).toEqual(legUses(bundle).map(() => 'routed'))
  }
})

test('the Gander Hill plan gives what the farmhouse needs, with no gap', () => {
  const { result } = answerOf('plan-gander-hill')
  expect(result.needed_gpm).toBe(500)
  expect(result.sustainable_gpm).toBeGreaterThanOrEqual(500)
  expect(result.gap_s).toBe(0)
  expect(result.short_s).toBe(0)
})

test('the Yarrow Bank plan falls short by more than a third', () => {
  const { result } = answerOf('plan-yarrow-bank')
  expect(result.needed_gpm).toBe(750)
  expect(result.sustainable_gpm).toBeGreaterThan(200)
  expect(result.sustainable_gpm).toBeLessThan(500)
  expect(result.issues.map(({ code }) => code)).toContain('short-of-need')
})

test('the school plan comes near, until the cistern is empty', () => {
  const { result } = answerOf('plan-school')
  expect(result.needed_gpm).toBe(1000)
  expect(result.sustainable_gpm).toBeGreaterThan(600)
  expect(result.sustainable_gpm).toBeLessThan(1000)
  expect(result.issues.find(({ code }) => code === 'source-empty')?.subjectIds).toContain('fill-cistern')
})

test('over the Covered Bridge a tender drives empty, and goes round loaded', () => {
  const { bundle } = answerOf('plan-yarrow-bank')
  for (const id of ['tender-12', 'tender-21', 'tender-72']) {
    expect(wayOf(bundle, id, 'dump-yarrow-lane', 'fill-covered-bridge')).toContain('Covered Bridge')
    expect(wayOf(bundle, id, 'fill-covered-bridge', 'dump-yarrow-lane')).not.toContain('Covered Bridge')
    expect(wayOf(bundle, id, 'fill-covered-bridge', 'dump-yarrow-lane')).toContain('South River Road')
  }
  expect(wayOf(bundle, 'tender-22', 'fill-covered-bridge', 'dump-yarrow-lane')).toContain('Covered Bridge')
})

test('a tender too high for the underpass goes another way to Dunmarrow', () => {
  const { bundle } = answerOf('plan-school')
  expect(wayOf(bundle, 'tender-12', 'station-1', 'dump-school')).toContain('Depot Street')
  expect(wayOf(bundle, 'tender-11', 'station-1', 'dump-school')).not.toContain('Depot Street')
})

// NFPA 1142: gallons = cubic feet / occupancy class × construction number × 1.5 with an exposure (read in a training presentation
// and a code-training article, which attribute it to the standard); least delivery 500 gpm from 2,500, 750 from 10,000, 1,000 gpm
// from 20,000 gal (§4.6, from memory). By hand:
//   barn     98 × 39 × (11 + 10/2) = 61,152 cu ft / 4 × 1.0 = 15,288 gal: 750 gpm
//   school   144 × 62 × (12 + 8/2) = 142,848 cu ft / 7 × 1.0 = 20,407 gal: 1,000 gpm
//   house    43 × 30 × (18 + 9/2) = 29,025 cu ft / 7 × 1.0 (dwelling) × 1.5 = 6,220 gal: 500 gpm
test.each([['yarrow-bank', 750], ['village-school', 1000], ['gander-house', 500]])('%s needs what the rural standard says, %i gpm', (id, needed_gpm) => {
  expect(findHazardFlow_gpm(shippedDistrict().hazards.find((hazard) => hazard.id === id))).toBe(needed_gpm)
})
