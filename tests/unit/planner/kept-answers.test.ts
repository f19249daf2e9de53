import { beforeEach, expect, test, vi } from 'vitest'
import { keepAnswer, keptAnswersOf } from '@/app/_plan/kept-answers'
import { flowWords } from '@/app/_plan/plan-fires'
import { evaluatePlan, type DependableFlow } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const stored = new Map<string, string>()
beforeEach(() => {
  stored.clear()
  vi.stubGlobal('localStorage', { getItem: (key: string) => stored.get(key) ?? null, setItem: (key: string, text: string) => { stored.set(key, text) } })
})

const { district, plan } = smallBundle()
const result = evaluatePlan(smallBundle(), { quick: true })
const words = (of = plan, within = district) => flowWords(keptAnswersOf(within, [of]).get(of.id), { needed_gpm: 250 }, 'us').replaceAll('\u00a0', ' ')

test('a list has the flow that the plan was answered with, the dependable one once its nights are drawn', () => {
  expect(words()).toBe('flow not known')
  keepAnswer(district, plan, { sustainable_gpm: 523 })
  expect(words()).toBe('expected 520 gpm, not tested for doubt')
  keepAnswer(district, plan, { sustainable_gpm: 523, dependable: { flow_gpm: 478 } as DependableFlow })
  expect(words()).toBe('dependable 475 gpm')
  expect(result.sustainable_gpm).not.toBeNull()
})

test('nothing is told of a plan that was changed since, or whose district was', () => {
  keepAnswer(district, plan, result)
  expect(words()).toMatch(/^expected \d+ gpm/)
  expect(words({ ...plan, name: 'Renamed' })).toBe('flow not known')
  expect(words(plan, smallBundle({ 'district.draftSites.0.lift_ft': 22 }).district)).toBe('flow not known')
})

test('a plan that is blocked has no answer, and what the device kept badly is none', () => {
  keepAnswer(district, plan, { sustainable_gpm: null })
  expect(words()).toBe('no answer yet')
  stored.set('millrace-plan-answers', '[{"planId":4}]')
  expect(words()).toBe('flow not known')
  stored.set('millrace-plan-answers', '{')
  expect(words()).toBe('flow not known')
})
