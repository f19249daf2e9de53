import { describe, expect, test } from 'vitest'
import { sheetKey, sheetsOf, whoBringsWhat } from '@/lib/book'
import { evaluatePlan } from '@/lib/supply'
import { shippedBundle, shippedDistrict, shippedPlans } from '../demo/shipped-demo'

describe('the sheets of a district', () => {
  const district = shippedDistrict(), plans = shippedPlans()
  const keys = sheetsOf(district, plans).map(sheetKey)

  test('are each there once: plans with their sites behind them, draft sites, hazards without a plan', () => {
    expect(new Set(keys).size).toBe(keys.length)
    for (const plan of plans) {
      const at = keys.indexOf(`plan ${plan.id}`)
      expect(keys.slice(at + 1, at + 1 + plan.fillSites.length + plan.dumpSites.length)).toEqual([...plan.fillSites.map(({ id }) => `fill ${plan.id} ${id}`), ...plan.dumpSites.map(({ id }) => `dump ${plan.id} ${id}`)])
    }
    expect(keys.filter((key) => key.startsWith('draft'))).toHaveLength(district.draftSites.length)
    const planned = new Set(plans.map(({ hazardId }) => hazardId))
    expect(keys.filter((key) => key.startsWith('hazard'))).toEqual(district.hazards.filter(({ id }) => !planned.has(id)).map(({ id }) => `hazard ${id}`))
  })
})

test('who brings what names every vehicle of the plan once, in the order of arrival, with what rides on it', () => {
  for (const { id } of shippedPlans()) {
    const bundle = shippedBundle(id)
    const result = evaluatePlan(bundle, { quick: true })
    const parts = whoBringsWhat(bundle, result)
    const { plan, district } = bundle
    const expected = new Set([...plan.fillSites, ...plan.dumpSites].flatMap(({ pumperId }) => pumperId ?? []).concat(plan.tenders.map(({ tenderId }) => tenderId), plan.firstDueId ?? []))
    expect(new Set(parts.map(({ apparatusId }) => apparatusId))).toEqual(expected)
    expect(parts).toHaveLength(expected.size)
    const times = parts.flatMap(({ arrive_s }) => arrive_s ?? [])
    expect(times).toEqual([...times].sort((a, b) => a - b))
    for (const { apparatusId, arrive_s, brings, task } of parts) {
      expect(brings).toEqual(district.equipment.filter(({ carriedBy }) => carriedBy === apparatusId))
      if (task === 'tender') expect(arrive_s).toBe(result.tenders.find((one) => one.id === apparatusId)!.arrive_s)
      if (apparatusId === plan.firstDueId && task === 'firstDue') expect(arrive_s).toBeCloseTo(result.firstArrival_s!, 6)
    }
  }
})
