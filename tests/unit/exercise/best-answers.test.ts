import { describe, expect, it } from 'vitest'
import { finish } from '@/lib/advise'
import { bestAnswers, isSession, replay, readSession, sessionShortfall, type Session } from '@/lib/exercise'
import type { Fact } from '@/lib/plan'
import { demoRoads } from '@/tests/fixtures/demo-roads'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle('gander-hill')
const resolve = await demoRoads()
const [fill] = bundle.plan.fillSites
const inject = (id: string, at_s: number, change: Fact['change']): Fact => ({ id, at_s, cause: 'inject', by: '', injectId: id, change })
const decision = (id: string, at_s: number, change: Fact['change']): Fact => ({ id, at_s, cause: 'decision', by: 'Water supply officer', change })
const stops = inject('stop', 2400, { kind: 'fillRate', fillSiteId: fill!.id, rateShare: 0, fault: 'pump' })
const mended = decision('mend', 3600, { kind: 'fillRate', fillSiteId: fill!.id, rateShare: 1 })
const END_S = 7200

describe('the best that could have been decided', () => {
  const [answer] = finish(bestAnswers(bundle, [stops, mended], END_S, resolve))

  it('stands beside what was decided and beside nothing at all', () => {
    expect(answer).toMatchObject({ factId: 'stop', decisionIds: ['mend'] })
    const whole = replay(bundle, [stops, mended], END_S) as Session
    const idle = replay(bundle, [stops], END_S) as Session
    // Before the inject nobody was short, so that what is missing since is what is missing in all.
    expect(sessionShortfall(replay(bundle, [], 2400) as Session, readSession(replay(bundle, [], 2400) as Session)).short_s).toBe(0)
    expect(answer!.decided.missing_gal).toBeCloseTo(sessionShortfall(whole, readSession(whole)).missing_gal, 6)
    expect(answer!.nothing.missing_gal).toBeCloseTo(sessionShortfall(idle, readSession(idle)).missing_gal, 6)
    expect(answer!.decided.missing_gal).toBeLessThan(answer!.nothing.missing_gal)
  })

  it('is found among single changes, best first, and each is better than nothing', () => {
    expect(answer!.triedCount).toBeGreaterThan(5)
    expect(answer!.best.length).toBeGreaterThan(0)
    const missing = answer!.best.map(({ outcome }) => outcome.missing_gal)
    expect(missing).toEqual(missing.toSorted((a, b) => a - b))
    expect(missing[0]).toBeLessThan(answer!.nothing.missing_gal)
    // The pump that stopped is replaced, or another place is used: what leaves it standing brings no water.
    const [first] = answer!.best
    expect(first!.option.kind === 'advice' && ['fillPumper', 'otherDraftSite', 'secondFillSite', 'swapPumpers'].includes(first!.option.candidate.kind)).toBe(true)
  })
})

it('decisions on another inject stay, and a trouble that costs nothing has nothing better', () => {
  const small = inject('small', 4000, { kind: 'unitLate', unitId: fill!.pumperId!, delay_s: 300 })
  const answers = finish(bestAnswers(bundle, [stops, mended, small], END_S, resolve))
  expect(answers.map(({ factId, decisionIds }) => [factId, decisionIds])).toEqual([['stop', ['mend']], ['small', []]])
  expect(answers[1]!.decided).toEqual(answers[1]!.nothing)
  expect(isSession(replay(bundle, [stops, mended, small], END_S))).toBe(true)
})
