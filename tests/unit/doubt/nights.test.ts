import { describe, expect, it } from 'vitest'
import { dependableFlow, dependableFrom, doubtInputs, nightDrawer, nightFlow, prepareDoubt, type DoubtModel } from '@/lib/doubt'
import { compilePlan, evaluatePlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const modelOf = (changes: Readonly<Record<string, unknown>> = {}, options: Parameters<typeof prepareDoubt>[1] = {}): DoubtModel => {
  const model = prepareDoubt(compilePlan(smallBundle(changes)), options)
  if (!model) throw new Error('the small plan must have an answer')
  return model
}

describe('what is doubted', () => {
  const inputs = doubtInputs(compilePlan(smallBundle()))
  const find = (key: string) => inputs.find((input) => input.key === key)

  it('is one input where many fall back on the same default', () => {
    expect(find('default/fillPosition_s=60')).toMatchObject({ itemIds: ['t1', 't2'], numberKeys: ['t1/fillPosition_s', 't2/fillPosition_s'], spreadShare: 0.5 })
  })

  it('is an input of its own once an item has its own number, measured or not', () => {
    const own = doubtInputs(compilePlan(smallBundle({ 'district.apparatus.2.fillPosition_s': 50, 'district.apparatus.2.evidence': { fillPosition_s: { mark: 'measured' } } })))
    expect(own.find(({ key }) => key === 't1/fillPosition_s')).toMatchObject({ value: 50, mark: 'measured', spreadShare: 0.05 })
    expect(own.find(({ key }) => key === 'default/fillPosition_s=60')?.itemIds).toEqual(['t2'])
  })

  it('takes the spread a person has given over that of the mark', () => {
    const own = doubtInputs(compilePlan(smallBundle({ 'district.draftSites.0.evidence': { lift_ft: { mark: 'measured', spreadShare: 0.2 } } })))
    expect(own.find(({ key }) => key === 'ds1/lift_ft')?.spreadShare).toBe(0.2)
  })

  it('is a road once for all who drive it, either way', () => {
    expect(inputs.filter(({ key }) => key.startsWith('road ')).map(({ key }) => key)).toEqual([
      'road fireGround~st1/travel_s', 'road f1~st1/travel_s', 'road du1~st1/travel_s', 'road du1~f1/travel_s',
    ])
  })

  it('is never what the officer chooses', () => {
    expect(inputs.map(({ field }) => field)).not.toContain('duration_s')
  })
})

describe('a night', () => {
  const model = modelOf()

  it('is the same again for the same seed and another for another', () => {
    const [a, b, c] = [1, 1, 2].map((seed) => [...nightDrawer(model, seed)(7).factors])
    expect(b).toEqual(a)
    expect(c).not.toEqual(a)
  })

  it('does not depend on the nights drawn before it', () => {
    const draw = nightDrawer(model, 1)
    for (let night = 0; night < 5; night++) draw(night)
    expect(structuredClone(draw(5))).toEqual(structuredClone(nightDrawer(model, 1)(5)))
  })

  it('is the same in a variant of the plan in all that the variant did not change', () => {
    const variant = modelOf({ 'plan.tenders': [{ id: 'k1', tenderId: 't1' }] })
    const [whole, part] = [nightDrawer(model, 1)(3), nightDrawer(variant, 1)(3)]
    variant.inputs.forEach(({ key }, index) => expect(part.factors[index]).toBe(whole.factors[model.inputs.findIndex((input) => input.key === key)]))
  })

  it('lies inside the range of every input', () => {
    const draw = nightDrawer(model, 1)
    for (let night = 0; night < 200; night++)
      draw(night).factors.forEach((factor, index) => expect(Math.abs(factor - 1)).toBeLessThanOrEqual(model.inputs[index]!.spreadShare))
  })

  it('has no flow where an input lies beyond what the plan can do', () => {
    // 22 ft of lift by half more or less: at the far end no pump lifts that high.
    const steep = modelOf({ 'district.draftSites.0.lift_ft': 22, 'district.draftSites.0.evidence': { lift_ft: { mark: 'assumed', spreadShare: 0.5 } } })
    const draw = nightDrawer(steep, 1)
    const blocked = Array.from({ length: 200 }, (_, night) => draw(night).isBlocked).filter(Boolean).length
    expect(blocked).toBeGreaterThan(10)
    expect(blocked).toBeLessThan(190)
  })
})

describe('the dependable flow', () => {
  it('is the expected flow where nothing is in doubt', () => {
    const model = modelOf({}, { inputs: [], tripSpread: {} })
    expect(Math.abs(dependableFlow(model, { nightCount: 10 }).flow_gpm - model.expected_gpm)).toBeLessThanOrEqual(0.5)
    expect(model.expected_gpm).toBe(evaluatePlan(smallBundle(), { quick: true }).sustainable_gpm)
  })

  it('is the same whether decided nights are dropped or worked out to the end', () => {
    const model = modelOf()
    const draw = nightDrawer(model, 4)
    const flows = Array.from({ length: 120 }, (_, index) => {
      const { spec, pump_gpm, isBlocked } = draw(index)
      return isBlocked ? 0 : nightFlow(spec, pump_gpm, model.grid_gpm).flow_gpm
    })
    expect(dependableFlow(model, { nightCount: 120, seed: 4 })).toEqual(dependableFrom(flows, 4))
  })

  it('is held in the share of nights it is asked for', () => {
    const flows = Array.from({ length: 200 }, (_, index) => 100 + index)
    const { flow_gpm, low_gpm, high_gpm } = dependableFrom(flows, 1, 0.9)
    expect(flows.filter((flow) => flow >= flow_gpm).length).toBe(180)
    expect(low_gpm).toBeLessThan(flow_gpm)
    expect(high_gpm).toBeGreaterThan(flow_gpm)
  })
})
