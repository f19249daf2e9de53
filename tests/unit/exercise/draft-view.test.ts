import { describe, expect, it } from 'vitest'
import { isSession, playSession, readSession, startSession, takeEffect, viewOf, type Session } from '@/lib/exercise'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle('yarrow-bank')

/** More is asked for than the shuttle brings, so that the draft is lost again and again. */
function asked(): Session {
  const begun = playSession(startSession(bundle) as Session, 780)
  const made = takeEffect(begun, { id: 'more', at_s: 780, cause: 'inject', by: '', change: { kind: 'moreDemand', add_gpm: 500 } })
  if (!isSession(made)) throw new Error(JSON.stringify(made))
  return made
}

const begun = asked()
const siteId = bundle.plan.dumpSites[0]!.id
const record = readSession(playSession(begun, 5400))
const eventsOf = (kind: string) => record.log.filter((one) => one.kind === kind && one.siteId === siteId).map(({ time_s }) => time_s)
const draftAt = (at_s: number) => viewOf(playSession(begun, at_s)).tanks[0]!.draft!

describe('why no water comes', () => {
  const [lost, priming, back] = [eventsOf('draft-lost'), eventsOf('reprime'), eventsOf('draft-back')]

  it('is a lost draft, since when, and how full the tanks must be before it is primed again', () => {
    expect(lost.length).toBeGreaterThan(2)
    for (const at_s of lost.filter((one) => !priming.some((next) => next - one >= 0 && next - one < 2))) {
      const draft = draftAt(at_s + 1)
      expect(draft).toMatchObject({ state: 'lost', lostAt_s: at_s })
      expect(draft.restart_gal).toBeGreaterThan(0)
    }
  })

  it('is priming, and the water comes when it says', () => {
    expect(back.length).toBeGreaterThan(2)
    back.forEach((at_s, k) => {
      const draft = draftAt(priming[k]! + 1)
      expect(draft.state).toBe('reprimes')
      expect(draft.lostAt_s).toBe(lost[k])
      expect(priming[k]! + 1 + draft.draws_s!).toBeCloseTo(at_s, 6)
      expect(draftAt(at_s + 0.5).state === 'draws' || lost.includes(at_s)).toBe(true)
    })
  })

  it('says when a rising tank gets there, where it does', () => {
    const foreseen = priming.flatMap((at_s, k) => {
      const draft = draftAt(at_s - 0.5)
      return draft.state === 'lost' && draft.draws_s !== undefined ? [at_s - 0.5 + draft.draws_s - back[k]!] : []
    })
    expect(foreseen.length).toBeGreaterThan(0)
    for (const off_s of foreseen) expect(Math.abs(off_s)).toBeLessThan(1e-3)
  })

  it('is a pumper that is not set up, or has too little in its tanks, before the supply is ready', () => {
    const set_s = record.log.find(({ kind, siteId: site }) => kind === 'pumper-set' && site === siteId)!.time_s
    expect(set_s - plainDraftAt(set_s - 60).set_s!).toBeCloseTo(set_s - 60, 6)
    expect(plainDraftAt(set_s - 60).state).toBe('sets-up')
  })

  it('leaves the water in the first engine alone once all supply has been ready', () => {
    const ready_s = record.run.supplyReady_s ?? record.log.find(({ kind }) => kind === 'all-supply-ready')!.time_s
    const plain = startSession(bundle) as Session
    expect(viewOf(playSession(plain, ready_s - 1)).isEngineHeld).toBe(false)
    const held = [ready_s + 1, 2400, 3600, 5400].map((at_s) => viewOf(playSession(at_s < 780 ? plain : begun, at_s)))
    for (const view of held) expect(view).toMatchObject({ isEngineHeld: true, engine_gal: held[0]!.engine_gal })
  })
})

function plainDraftAt(at_s: number) {
  const plain = startSession(bundle) as Session
  return viewOf(playSession(plain, at_s)).tanks[0]!.draft!
}
