import { describe, expect, it } from 'vitest'
import { isSession, nextEventAt, playSession, readSession, replay, roadClosures, startSession, stateAt, takeEffect, viewOf, type RoadClosure, type Session } from '@/lib/exercise'
import { distanceM, nearestOnLine, pointAlong } from '@/lib/geo'
import type { Change } from '@/lib/plan'
import { balanceOf } from '@/lib/shuttle'
import { demoRoads } from '@/tests/fixtures/demo-roads'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle('gander-hill')
const resolve = await demoRoads()
const closures = roadClosures(bundle, resolve)
const begun = startSession(bundle) as Session

const decided = (session: Session, change: Change): Session => {
  const made = takeEffect(session, { id: `d${session.facts.length}`, at_s: session.clock_s, cause: 'inject', by: '', change })
  if (!isSession(made)) throw new Error(JSON.stringify(made))
  return made
}
const closing = ({ point, detours }: RoadClosure): Change => ({ kind: 'roadClosed', roadId: 'closed', point, detours: [...detours] })

/** The first moment from which some tender drives loaded so far along its way. */
function drivingAt(share: number, from_s = 1500): { session: Session; id: string } {
  for (let at_s = from_s; at_s < from_s + 4000; at_s += 5) {
    const session = playSession(begun, at_s)
    const found = viewOf(session).tenders.find(({ phase, alongShare }) => phase === 'drives-to-dump' && alongShare !== undefined && Math.abs(alongShare - share) < 0.04)
    if (found) return { session, id: found.id }
  }
  throw new Error('nobody drives')
}
const tenderOf = (session: Session, id: string) => viewOf(session).tenders.find((one) => one.id === id)!
const specOf = (session: Session, id: string) => session.now.world.spec.tenders.find((one) => one.id === id)!

describe('where a line passes', () => {
  it('is nearest to a point on it at that point, and the share is that of its length', () => {
    const line = [{ lat: 45, lon: -70 }, { lat: 45.01, lon: -70 }, { lat: 45.01, lon: -69.98 }]
    for (const share of [0, 0.2, 0.5, 0.77, 1]) {
      const found = nearestOnLine(line, pointAlong(line, share))
      expect(found.distance_m).toBeLessThan(0.5)
      expect(found.share).toBeCloseTo(share, 4)
    }
    const beside = { lat: 45.005, lon: -70.001 }
    // The great circle of lib/geo is the second opinion.
    expect(nearestOnLine(line, beside).distance_m).toBeCloseTo(distanceM(beside, { lat: 45.005, lon: -70 }), 1)
  })
})

describe('a road that is closed', () => {
  it('is one that tenders drive, and every way round keeps clear of the closed place', () => {
    expect(closures.length).toBeGreaterThan(0)
    for (const { point, detours, stuckIds } of closures) {
      expect(detours.length + stuckIds.length).toBeGreaterThan(0)
      for (const { path } of detours) expect(nearestOnLine(path, point).distance_m).toBeGreaterThan(12)
    }
  })

  const round = closures.find(({ detours, stuckIds }) => detours.length > 1 && stuckIds.length === 0)!

  it('sends tenders the other way, in its own time', () => {
    const session = decided(begun, closing(round))
    const [tender] = session.now.world.spec.tenders
    const there = round.detours.find(({ apparatusId, fromId }) => apparatusId === tender!.id && fromId === bundle.plan.dumpSites[0]!.id)!
    expect(specOf(session, tender!.id).toFill_s).toBe(there.travel_s)
    expect(there.travel_s).toBeGreaterThanOrEqual(specOf(begun, tender!.id).toFill_s)
  })

  it('lets those go on who have passed the closed place, and turns those who are short of it', () => {
    const past = drivingAt(0.8)
    const goesOn = tenderOf(decided(past.session, closing(round)), past.id)
    expect(goesOn.left_s).toBeCloseTo(tenderOf(past.session, past.id).left_s!, 6)
    const short = drivingAt(0.25)
    const before = tenderOf(short.session, short.id)
    const after = decided(short.session, closing(round))
    const whole_s = specOf(short.session, short.id).toDump_s
    // Back to where it set off, as long as it has driven, then the whole way round.
    expect(tenderOf(after, short.id).left_s).toBeCloseTo(whole_s - before.left_s! + specOf(after, short.id).toDump_s, 6)
  })

  it('stops those who have no way round, says so, and lets them set off when it is open again', () => {
    const { session } = drivingAt(0.25)
    const closed = playSession(decided(session, closing({ ...round, detours: [] })), session.clock_s + 5400)
    const view = viewOf(closed)
    expect(view.tenders.every(({ isHeldUp }) => isHeldUp)).toBe(true)
    expect(view.tenders.every(({ left_s }) => left_s === undefined)).toBe(true)
    expect(nextEventAt(closed) ?? Infinity).toBeGreaterThan(closed.clock_s)
    expect(readSession(closed).flow.at(-1)!.flow_gpm).toBe(0)
    const open = decided(closed, { kind: 'roadOpened', roadId: 'closed' })
    for (const { id, isHeldUp, left_s, phase } of viewOf(open).tenders) {
      expect(isHeldUp).toBeUndefined()
      expect(left_s).toBeCloseTo(phase === 'drives-to-fill' ? specOf(open, id).toFill_s : specOf(open, id).toDump_s, 6)
    }
    expect(readSession(playSession(open, open.clock_s + 3600)).flow.at(-1)!.flow_gpm).toBeGreaterThan(0)
  })

  it('holds up who has not come yet, and nobody before dispatch is late for a road that is open', () => {
    const [tender] = bundle.plan.tenders
    const use = roadClosures(bundle, resolve)
    expect(use.length).toBe(closures.length)
    const planned_s = specOf(begun, tender!.tenderId).arrive_s!
    const after = decided(begun, closing(round))
    expect(specOf(after, tender!.tenderId).arrive_s).toBeGreaterThanOrEqual(planned_s)
    expect(specOf(decided(after, { kind: 'roadOpened', roadId: 'closed' }), tender!.tenderId).toFill_s).toBe(specOf(begun, tender!.tenderId).toFill_s)
  })

  it('cannot be opened where none is closed', () => {
    expect(isSession(takeEffect(begun, { id: 'x', at_s: 0, cause: 'decision', by: '', change: { kind: 'roadOpened', roadId: 'nowhere' } }))).toBe(false)
  })

  it('keeps the water balance, and is the same run again from its facts', () => {
    const { session } = drivingAt(0.25)
    const closed = playSession(decided(session, closing({ ...round, detours: round.detours.slice(0, 1) })), session.clock_s + 1200)
    const end = playSession(decided(closed, { kind: 'roadOpened', roadId: 'closed' }), closed.clock_s + 3600)
    const balance = balanceOf(end.now.scenario, stateAt(end))
    expect(Math.abs(balance.error_gal)).toBeLessThan(1e-6 * (balance.initial_gal + balance.drawn_gal))
    expect(readSession(replay(bundle, end.facts, end.clock_s) as Session)).toEqual(readSession(end))
  })
})
