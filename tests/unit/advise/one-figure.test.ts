import { describe, expect, test } from 'vitest'
import { unprovenLead, unprovenText } from '@/app/_advice/unproven-text'
import { changedNames } from '@/app/_advice/changed-names'
import { requestText } from '@/app/_advice/request-text'
import { advise, baselineOf, dependableGains, dependableOf, finish, planWith, requestList } from '@/lib/advise'
import { flowDoubt, prepareDoubt } from '@/lib/doubt'
import { namesOf } from '@/lib/plan'
import { compilePlan, evaluatePlan } from '@/lib/supply'
import { adviceBundle } from '@/tests/fixtures/advice-bundle'
import { demoBundle, demoRoads } from '@/tests/fixtures/demo-roads'

const roads = await demoRoads()
const plans = ['gander-hill', 'yarrow-bank'] as const
const adviceOn = Object.fromEntries(plans.map((name) => [name, finish(advise(demoBundle(name), roads))]))

describe.each(plans)('%s', (name) => {
  const bundle = demoBundle(name)
  const advice = adviceOn[name]
  if (!advice) throw new Error('the plan has no answer')

  test('gains start from the dependable flow of the headline', () => {
    const base = baselineOf(bundle, roads)
    const model = prepareDoubt(compilePlan(bundle))
    if (!base || !model) throw new Error('the plan has no answer')
    const headline = flowDoubt(model).dependable.flow_gpm
    expect(finish(dependableGains(base, [], roads)).base_gpm).toBe(headline)
    expect(dependableOf(compilePlan(bundle))).toBe(headline)
  })

  test('what limits the plan is what its headline says, with a change what the changed plan says', () => {
    expect(advice.limit).toEqual(evaluatePlan(bundle).limitingLink)
    const [first] = advice.ranked.helpful
    expect(advice.limits.has(first?.candidate.id ?? '')).toBe(true)
  })
})

test('another pond of unknown volume is to be looked at first, and the lift there is that of the new place', () => {
  const bundle = demoBundle('gander-hill')
  const names = (id: string) => namesOf(bundle).get(id)
  const unproven = adviceOn['gander-hill']?.ranked.unproven ?? []
  const moved = unproven.find(({ candidate }) => candidate.kind === 'otherDraftSite' && candidate.subjectIds[0] === 'draft-kettle')
  const second = unproven.find(({ candidate }) => candidate.kind === 'secondFillSite' && candidate.subjectIds[0] === 'draft-kettle')
  if (!moved || !second) throw new Error('the pond is not among the changes')
  for (const trial of [moved, second]) {
    const text = unprovenText(trial, changedNames(bundle, trial.candidate, names))
    expect(text).toContain('how much water Kettle Pond holds')
    expect(text).toContain('the lift at Kettle Pond bank')
    expect(text).not.toContain('Boat launch')
  }
  expect(unprovenLead([moved])).toMatch(/soft ground.*a lift nobody measured.*a pond of unknown volume/)
  expect(unprovenLead([moved])).not.toContain('hydrant')
})

test('whom to ask says of its set what the plan with that set says of itself, expected and dependable', () => {
  const bundle = adviceBundle()
  const list = finish(requestList(bundle, { flow_gpm: 200, by_s: 3600 }, (same) => same))
  if (Array.isArray(list)) throw new Error('the plan must have a list')
  const changed = planWith(bundle.plan, list.edits)
  if ('code' in changed) throw new Error(changed.code)
  const asked = compilePlan({ ...bundle, plan: changed.plan })
  expect(list.flow_gpm).toBeCloseTo(evaluatePlan(asked.bundle, { quick: true }).sustainable_gpm ?? NaN, 6)
  expect(list.dependable_gpm).toBeCloseTo(dependableOf(asked) ?? NaN, 6)
  expect(list.dependable_gpm).toBeLessThan(list.flow_gpm)
  // What is read out over the radio is what an officer says.
  const text = requestText(list, 'the barn', (id) => namesOf(bundle).get(id), 'us')
  expect(text).toMatch(/^Water supply for the barn: 200/)
  expect(text).toMatch(/Confirm who can come, and when\.$/)
  expect(text).not.toMatch(/planning aid|worked out/i)
})
