import { describe, expect, it } from 'vitest'
import { changeOfEdits, isSession, playSession, roadClosures, startSession, takeEffect, tenderPoints, viewOf, type Session } from '@/lib/exercise'
import { distanceM, pointAlong } from '@/lib/geo'
import { findApparatus, findStation, type Change } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import { demoRoads } from '@/tests/fixtures/demo-roads'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle('yarrow-bank')
const begun = startSession(bundle) as Session
const resolve = await demoRoads()

const decided = (session: Session, change: Change): Session => {
  const made = takeEffect(session, { id: `d${session.facts.length}`, at_s: session.clock_s, cause: 'decision', by: '', change })
  if (!isSession(made)) throw new Error(JSON.stringify(made))
  return made
}
const tenderOf = (session: Session, id: string) => viewOf(session).tenders.find((one) => one.id === id)!
const pointOf = (session: Session, id: string) => tenderPoints(session.now.world.bundle, viewOf(session).tenders, session.now.world.conditions).find((one) => one.id === id)!.point
const stationOf = (id: string) => findStation(bundle, findApparatus(bundle, id)?.stationId)!
const turnoutOf = (id: string) => findApparatus(bundle, id)?.turnout_s ?? stationOf(id).turnout_s ?? defaults.turnout_s.value
const fromStation_m = (session: Session, id: string) => distanceM(pointOf(session, id), stationOf(id).point)
const travelOf = (id: string) => arriveOf(begun, id) - turnoutOf(id) - (bundle.plan.tenders.find(({ tenderId }) => tenderId === id)?.delay_s ?? 0)
const arriveOf = (session: Session, id: string) => session.now.world.spec.tenders.find((one) => one.id === id)!.arrive_s!

describe('a tender that comes from its station', () => {
  const ids = begun.now.world.spec.tenders.map(({ id }) => id)

  it('is at its station until its turnout is over, then on the road to its site', () => {
    for (const id of ids) {
      const rolls_s = turnoutOf(id) + (bundle.plan.tenders.find(({ tenderId }) => tenderId === id)?.delay_s ?? 0)
      expect(tenderOf(begun, id).rolls_s).toBeCloseTo(rolls_s, 6)
      for (const at_s of [0, rolls_s / 2, rolls_s - 1]) expect(fromStation_m(playSession(begun, at_s), id)).toBeLessThan(1)
      const half = playSession(begun, (rolls_s + arriveOf(begun, id)) / 2)
      expect(tenderOf(half, id).alongShare).toBeCloseTo(0.5, 6)
      expect(tenderOf(half, id).rolls_s).toBeUndefined()
      expect(tenderOf(playSession(begun, arriveOf(begun, id) - 1), id).alongShare).toBeGreaterThan(0.99)
    }
  })

  it('is at its station too when it is called in the middle of a run', () => {
    const called = bundle.district.apparatus.find(({ kind, id }) => kind === 'tender' && !ids.includes(id))!
    const task = bundle.plan.tenders[0]!
    const late = playSession(begun, 1106)
    const change = changeOfEdits(bundle, [{ kind: 'addItem', collection: 'tenders', item: { ...task, id: 'called', tenderId: called.id, delay_s: undefined } }], { closed: [] }, resolve)!
    const session = decided(late, change)
    const minuteLater = playSession(session, 1106 + 57)
    expect(turnoutOf(called.id)).toBeGreaterThan(57)
    expect(fromStation_m(minuteLater, called.id)).toBeLessThan(1)
    expect(tenderOf(minuteLater, called.id).rolls_s).toBeCloseTo(turnoutOf(called.id) - 57, 6)
    expect(fromStation_m(playSession(session, 1106 + turnoutOf(called.id) + 60), called.id)).toBeGreaterThan(100)
  })

  it('stands where it is when it is made late on the road, and never jumps back', () => {
    const id = ids[0]!
    const at_s = turnoutOf(id) + 0.6 * (arriveOf(begun, id) - turnoutOf(id))
    const before = playSession(begun, at_s)
    const share = tenderOf(before, id).alongShare!
    const late = decided(before, { kind: 'unitLate', unitId: id, delay_s: 300 })
    for (const more_s of [0, 150, 299]) expect(tenderOf(playSession(late, at_s + more_s), id).alongShare).toBeCloseTo(share, 6)
    expect(tenderOf(playSession(late, at_s + 360), id).alongShare).toBeGreaterThan(share)
    const early = decided(playSession(begun, 10), { kind: 'unitLate', unitId: id, delay_s: 300 })
    expect(tenderOf(early, id).rolls_s).toBeCloseTo(turnoutOf(id) + 300 - 10, 6)
  })

  it('drives back the road it came when a closed place lies before it, and goes on when it has passed it', () => {
    let [turned, passed] = [0, 0]
    for (const closure of roadClosures(bundle, resolve)) {
      for (const [id, part] of ids.flatMap((one) => [0.5, 0.95].map((share) => [one, share] as const))) {
        const at_s = turnoutOf(id) + (bundle.plan.tenders.find(({ tenderId }) => tenderId === id)?.delay_s ?? 0) + part * travelOf(id)
        const before = playSession(begun, at_s)
        const after = decided(before, { kind: 'roadClosed', roadId: 'closed', point: closure.point, detours: [...closure.detours] })
        const seen = tenderOf(after, id)
        if (seen.isHeldUp) continue
        expect(distanceM(pointOf(after, id), pointOf(before, id))).toBeLessThan(1)
        const late_s = arriveOf(after, id) - arriveOf(begun, id)
        if (late_s === 0 && seen.isOnPlannedWay) passed++
        if (late_s === 0) continue
        turned++
        const round = closure.detours.find(({ apparatusId, fromId, toId }) => apparatusId === id && fromId === stationOf(id).id && toId === seen.siteId)!
        const atStation_s = arriveOf(after, id) - round.travel_s
        expect(fromStation_m(playSession(after, atStation_s), id)).toBeLessThan(1)
        const halfRound = playSession(after, atStation_s + round.travel_s / 2)
        expect(distanceM(pointOf(halfRound, id), pointAlong(round.path, 0.5))).toBeLessThan(1)
      }
    }
    expect(turned).toBeGreaterThan(0)
    expect(passed).toBeGreaterThan(0)
  })
})
