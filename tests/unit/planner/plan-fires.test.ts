import { expect, it } from 'vitest'
import { fireWords, firesOf } from '@/app/_plan/plan-fires'
import { smallBundle } from '@/tests/fixtures/bundle'

const wordsOf = (changes: Readonly<Record<string, unknown>> = {}) => {
  const { district, plan } = smallBundle(changes)
  return fireWords(firesOf(district, [plan]).get(plan.id), 'us').replaceAll('\u00a0', ' ')
}

it('says what a plan is for and what it needs, as far as either is known', () => {
  expect(wordsOf()).toBe('for Barn, 250 gpm needed')
  expect(wordsOf({ 'plan.demand': [{ id: 's1', from_s: 0, flow_gpm: 200 }, { id: 's2', from_s: 600, flow_gpm: 700 }] })).toBe('for Barn, 700 gpm needed')
  expect(wordsOf({ 'district.hazards.0.needed_gpm': undefined })).toBe('for Barn')
  expect(wordsOf({ 'plan.hazardId': undefined })).toBe('')
  expect(wordsOf({ 'plan.hazardId': undefined, 'plan.demand': [{ id: 's1', from_s: 0, flow_gpm: 200 }] })).toBe('200 gpm needed')
})
