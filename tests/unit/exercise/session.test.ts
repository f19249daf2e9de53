import { describe, expect, it } from 'vitest'
import { balanceOf, compileShuttle, levelAt, recordShuttle } from '@/lib/shuttle'
import { compilePlan } from '@/lib/supply'
import { factOf, isSession, playSession, readSession, replay, startSession, stateAt, takeEffect, type Session } from '@/lib/exercise'
import type { Change, Fact, Inject } from '@/lib/plan'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle()
const [fillId, dumpId] = [bundle.plan.fillSites[0]!.id, bundle.plan.dumpSites[0]!.id]
const tenderIds = bundle.plan.tenders.map(({ tenderId }) => tenderId as string)

function begun(injects: readonly Inject[] = []): Session {
  const session = startSession(bundle, injects)
  if (!isSession(session)) throw new Error(JSON.stringify(session))
  return session
}

const decided = (session: Session, change: Change): Session => {
  const fact: Fact = { id: `d${session.facts.length}`, at_s: session.clock_s, cause: 'decision', by: 'water supply officer', change }
  const made = takeEffect(session, fact)
  if (!isSession(made)) throw new Error(JSON.stringify(made))
  return made
}

const injectAt = (id: string, at_s: number, change: Change): Inject => ({ id, title: id, trigger: { kind: 'time', at_s }, change })
const levelOf = (session: Session) => levelAt(stateAt(session), 0)
const flowAt = (session: Session, time_s: number) => readSession(session).flow.findLast((step) => step.from_s <= time_s)?.flow_gpm

describe('with nothing come over it', () => {
  it('is the planned run', () => {
    const spec = compilePlan(bundle).spec!
    const planned = recordShuttle(compileShuttle(spec))
    const end_s = planned.run.supplyReady_s! + 3600
    const played = readSession(playSession(begun(), end_s))
    expect(played.log).toEqual(planned.log.filter(({ time_s }) => time_s <= end_s))
    expect(played.run.supplyReady_s).toBe(planned.run.supplyReady_s)
  })

  it('is the same in one go and in many small ones', () => {
    let small = begun()
    for (let at_s = 0; at_s <= 3600; at_s += 7) small = playSession(small, at_s)
    const whole = playSession(begun(), small.clock_s)
    expect(readSession(small)).toEqual(readSession(whole))
  })
})

describe('injects', () => {
  it('come at their time, whichever way the clock is moved', () => {
    const injects = [injectAt('tips', 1800, { kind: 'tankTips', dumpSiteId: dumpId, lostShare: 1 })]
    const came: string[] = []
    const session = playSession(begun(injects), 3600, ({ inject }) => came.push(inject.id))
    expect(came).toEqual(['tips'])
    expect(session.facts).toMatchObject([{ at_s: 1800, cause: 'inject', injectId: 'tips' }])
    expect(session.armed).toEqual([])
  })

  it('a tank that tips loses what stood in it, and no more', () => {
    const before = playSession(begun(), 2400)
    const after = decided(before, { kind: 'tankTips', dumpSiteId: dumpId, lostShare: 1 })
    expect(levelOf(before)).toBeGreaterThan(500)
    expect(levelOf(after)).toBe(0)
    const [was, is] = [balanceOf(before.now.scenario, stateAt(before)), balanceOf(after.now.scenario, stateAt(after))]
    expect(is.spilled_gal - was.spilled_gal).toBeCloseTo(levelOf(before), 6)
  })

  it('a conditional one comes at the moment the tank passes the level', () => {
    const trigger = { kind: 'level', dumpSiteId: dumpId, belowShare: 1 / 3 } as const
    const stopped = injectAt('pump', 1500, { kind: 'fillRate', fillSiteId: fillId, rateShare: 0 })
    const session = playSession(begun([stopped, { id: 'more', title: 'second building', trigger, change: { kind: 'moreDemand', add_gpm: 100 } }]), 7200)
    const [, more] = session.facts
    expect(more).toMatchObject({ injectId: 'more' })
    const capacity_gal = session.now.world.spec.dumps[0]!.capacity_gal
    const just = replay(bundle, session.facts.slice(0, 1), more!.at_s) as Session
    expect(levelOf(just)).toBeCloseTo(capacity_gal / 3, 6)
  })

  it('one that speaks of what is gone has no effect, and says so', () => {
    const tenderId = tenderIds[0]!
    const refused: string[] = []
    const session = playSession(begun([
      injectAt('out', 1200, { kind: 'tenderOut', tenderId }), injectAt('sent', 1300, { kind: 'sendTender', tenderId, dumpSiteId: dumpId }),
    ]), 2000, ({ inject, refused: why }) => { if (why) refused.push(`${inject.id} ${why[0]!.code}`) })
    expect(refused).toEqual(['sent exercise-names-nothing'])
    expect(session.facts).toHaveLength(1)
  })

  it('come in the order of the exercise when several are due at once', () => {
    const session = playSession(begun([
      injectAt('b', 900, { kind: 'demand', flow_gpm: 200 }), injectAt('a', 900, { kind: 'moreDemand', add_gpm: 50 }),
    ]), 1000)
    expect(session.facts.map(({ injectId }) => injectId)).toEqual(['b', 'a'])
    expect(readSession(session).asked.at(-1)).toEqual({ from_s: 900, flow_gpm: 250 })
  })
})

describe('what is so from then on', () => {
  it('a fill pump that stops dries the tanks, and one that starts again fills them', () => {
    const stopped = decided(playSession(begun(), 1800), { kind: 'fillRate', fillSiteId: fillId, rateShare: 0 })
    const dry = playSession(stopped, 1800 + 5400)
    expect(flowAt(dry, dry.clock_s)).toBe(0)
    const mended = playSession(decided(playSession(stopped, 3000), { kind: 'fillRate', fillSiteId: fillId, rateShare: 1 }), 7200)
    expect(flowAt(mended, 7200)).toBeGreaterThan(0)
  })

  it('a unit that comes late holds up what waits for it, and nothing that has begun', () => {
    const { pumperId } = bundle.plan.fillSites[0]!
    const late = decided(begun(), { kind: 'unitLate', unitId: pumperId!, delay_s: 900 })
    expect(late.now.world.spec.fills[0]!.ready_s).toBe(begun().now.world.spec.fills[0]!.ready_s + 900)
    const begunAlready = decided(playSession(begun(), 3600), { kind: 'unitLate', unitId: pumperId!, delay_s: 900 })
    expect(begunAlready.now.world.spec.fills[0]).toEqual(begun().now.world.spec.fills[0])
  })

  it('what a decision brings in is sent when it is made', () => {
    const first = bundle.plan.tenders[0]!
    const without = decided(begun(), { kind: 'plan', edits: [{ doc: 'plan', body: { kind: 'removeItem', collection: 'tenders', id: first.id } }] })
    const called = decided(playSession(without, 1200), { kind: 'plan', edits: [{ doc: 'plan', body: { kind: 'addItem', collection: 'tenders', item: { ...first, id: 'called' } } }] })
    const arrive_s = (session: Session) => session.now.world.spec.tenders.find(({ id }) => id === first.tenderId)?.arrive_s
    expect(arrive_s(called)).toBe(1200 + arrive_s(begun())!)
  })

  it('a decision that leaves nothing to run is refused, and the exercise stays as it was', () => {
    const session = playSession(begun(), 600)
    const made = takeEffect(session, { id: 'x', at_s: 600, cause: 'decision', by: '', change: { kind: 'plan', edits: [{ doc: 'plan', body: { kind: 'removeItem', collection: 'dumpSites', id: dumpId } }] } })
    expect(isSession(made)).toBe(false)
  })
})

it('a branch leaves the exercise it came from as it was', () => {
  const trunk = playSession(begun(), 1500)
  const before = readSession(playSession(trunk, 4000))
  playSession(decided(trunk, { kind: 'tenderOut', tenderId: tenderIds[1]! }), 4000)
  expect(readSession(playSession(trunk, 4000))).toEqual(before)
})

it('refuses a fact of another moment', () => {
  expect(() => takeEffect(playSession(begun(), 100), factOf(injectAt('x', 50, { kind: 'demand', flow_gpm: 1 }), 50))).toThrow(/must be the clock, 100/)
})
