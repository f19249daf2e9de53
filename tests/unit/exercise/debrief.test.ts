import { describe, expect, it } from 'vitest'
import { effectsOf, gapsOf, playSession, readSession, startSession, sessionShortfall, type Session } from '@/lib/exercise'
import type { Change, Inject } from '@/lib/plan'
import { demoBundle } from './demo-bundle'

const troubles = (changes: readonly (readonly [number, Change])[]): Inject[] => changes.map(([at_s, change], i) => ({ id: `t${i}`, title: `t${i}`, trigger: { kind: 'time', at_s }, change }) as Inject)
const lossesOfTenders = troubles([[60, { kind: 'unitLate', unitId: 'tender-71', delay_s: 600 }], [1440, { kind: 'tenderOut', tenderId: 'tender-12' }]])

describe('what each fact did to the water', () => {
  const bundle = demoBundle('school')
  const session = playSession(startSession(bundle, lossesOfTenders) as Session, 3000)

  it('says that less missing with fewer tenders is a matter of when the gaps fall', () => {
    const effects = effectsOf(bundle, session.facts, 3000)
    expect(effects.some(({ missing_gal }) => missing_gal < -1000)).toBe(true)
    for (const { missing_gal, isTiming } of effects) if (missing_gal < -1) expect(isTiming).toBe(true)
  })

  it('lets a gap that only the trouble made stand as its doing', () => {
    const [late] = effectsOf(bundle, session.facts, 1800)
    expect(late!.missing_gal).toBeGreaterThan(1000)
    expect(late!.isTiming).toBe(false)
  })

  it('has gaps that sum to what was missed', () => {
    const record = readSession(session)
    const gaps = gapsOf(record.asked, record.flow, session.now.scenario.demand.countFrom_s, 3000)
    expect(gaps.length).toBeGreaterThan(1)
    expect(gaps.reduce((sum, { missing_gal }) => sum + missing_gal, 0)).toBeCloseTo(sessionShortfall(session, record).missing_gal, 6)
  })
})
