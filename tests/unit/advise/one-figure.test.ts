import { describe, expect, test } from 'vitest'
import { unprovenLead, unprovenText } from '@/app/_advice/unproven-text'
import { changedNames } from '@/app/_advice/changed-names'
import { advise, baselineOf, dependableGains, dependableOf, finish } from '@/lib/advise'
import { flowDoubt, prepareDoubt } from '@/lib/doubt'
import { namesOf } from '@/lib/plan'
import { compilePlan, evaluatePlan } from '@/lib/supply'
import { demoBundle, demoRoads } from '@/tests/fixtures/demo-roads'

const roads = await demoRoads()
const plans = ['gander-hill', 'school', 'yarrow-bank'] as const

describe.each(plans)('%s', (name) => {
  const bundle = demoBundle(name)
  const advice = finish(advise(bundle, roads))
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
  const unproven = finish(advise(bundle, roads))?.ranked.unproven ?? []
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
