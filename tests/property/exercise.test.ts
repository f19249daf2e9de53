import fc from 'fast-check'
import { expect, it } from 'vitest'
import { balanceOf } from '@/lib/shuttle'
import { effectsOf, isSession, playSession, readSession, replaceSite, replay, roadClosures, startSession, stateAt, takeEffect, type Session } from '@/lib/exercise'
import type { Change, EditBody } from '@/lib/plan'
import { demoRoads } from '../fixtures/demo-roads'
import { demoBundle } from '../unit/exercise/demo-bundle'

const bundles = (['gander-hill', 'yarrow-bank', 'school'] as const).map(demoBundle)
const resolve = await demoRoads()
const closures = bundles.map((bundle) => roadClosures(bundle, resolve))

/** Decisions that change the plan itself. Ways of a moved site are straight lines here: what is asked is whether the run can be branched. */
const planChanges = (k: number): Change[] => {
  const { plan, district } = bundles[k]!
  const set = (collection: string, id: string, fields: Record<string, unknown>): EditBody => ({ kind: 'setFields', collection, id, set: fields })
  const lists: EditBody[][] = [
    ...plan.fillSites.flatMap(({ id }) => [1, 2, 3].map((bayCount) => [set('fillSites', id, { bayCount })])),
    ...plan.dumpSites.flatMap(({ id }) => [1, 2, 3].map((positionCount) => [set('dumpSites', id, { positionCount })])),
    ...plan.fillSites.map(({ id }) => replaceSite(bundles[k]!, id, { point: district.draftSites[0]!.point, draftSiteId: district.draftSites[0]!.id }, `${id}-2`)),
    ...plan.dumpSites.map(({ id, point }) => replaceSite(bundles[k]!, id, { point: { lat: point.lat + 0.003, lon: point.lon } }, `${id}-2`)),
    ...plan.tenders.map(({ id }): EditBody[] => [{ kind: 'removeItem', collection: 'tenders', id }]),
  ]
  return lists.map((bodies) => ({ kind: 'plan', edits: bodies.map((body) => ({ doc: 'plan', body })) }))
}

/** Anything that may come over a plan or be decided in it, on things that are there at dispatch. */
const changeOf = (k: number): fc.Arbitrary<Change> => {
  const { plan, district } = bundles[k]!
  const [fillSiteId, dumpSiteId] = [fc.constantFrom(...plan.fillSites.map(({ id }) => id as string)), fc.constantFrom(...plan.dumpSites.map(({ id }) => id as string))]
  const tenderId = fc.constantFrom(...plan.tenders.map((task) => task.tenderId as string))
  const share = fc.constantFrom(0, 0.3, 1)
  return fc.oneof(
    fc.record({ kind: fc.constant('tenderOut' as const), tenderId }),
    fc.record({ kind: fc.constant('unitLate' as const), unitId: fc.constantFrom(...district.apparatus.map(({ id }) => id as string)), delay_s: fc.integer({ min: 0, max: 1800 }) }),
    fc.record({ kind: fc.constant('fillRate' as const), fillSiteId, rateShare: share }),
    fc.record({ kind: fc.constant('sourceLow' as const), fillSiteId, leftShare: share }),
    fc.record({ kind: fc.constant('tankLeak' as const), dumpSiteId, leak_gpm: fc.constantFrom(0, 60, 400) }),
    fc.record({ kind: fc.constant('tankTips' as const), dumpSiteId, lostShare: share }),
    fc.record({ kind: fc.constant('moreDemand' as const), add_gpm: fc.integer({ min: -300, max: 500 }) }),
    fc.record({ kind: fc.constant('demand' as const), flow_gpm: fc.integer({ min: 0, max: 900 }) }),
    fc.record({ kind: fc.constant('sendTender' as const), tenderId, fillSiteId, dumpSiteId }),
    fc.record({ road: fc.constantFrom(...closures[k]!), isOpen: fc.boolean(), hasWay: fc.boolean() }).map(({ road: { fromId, point, detours }, isOpen, hasWay }): Change =>
      isOpen ? { kind: 'roadOpened', roadId: fromId } : { kind: 'roadClosed', roadId: fromId, point, detours: hasWay ? [...detours] : [] }),
    fc.constantFrom(...planChanges(k)),
  )
}
const course = fc.nat({ max: bundles.length - 1 }).chain((k) => fc.record({
  k: fc.constant(k), happens: fc.array(fc.tuple(fc.integer({ min: 1, max: 900 }), changeOf(k)), { maxLength: 8 }),
}))

/** Plays an exercise with all that happens in it; what cannot be is left out. */
function played(k: number, happens: readonly (readonly [number, Change])[]): Session {
  let session = startSession(bundles[k]!) as Session
  happens.forEach(([wait_s, change], i) => {
    session = playSession(session, session.clock_s + wait_s)
    const made = takeEffect(session, { id: `f${i}`, at_s: session.clock_s, cause: 'decision', by: '', change })
    if (isSession(made)) session = made
  })
  return playSession(session, session.clock_s + 1800)
}

it('an exercise is the same, to the bit, as a fresh run given the same facts', () => {
  fc.assert(fc.property(course, ({ k, happens }) => {
    const session = played(k, happens)
    const fresh = replay(bundles[k]!, session.facts, session.clock_s) as Session
    expect(new Uint8Array(stateAt(fresh).buffer)).toEqual(new Uint8Array(stateAt(session).buffer))
    expect(readSession(fresh)).toEqual(readSession(session))
  }), { numRuns: 100 })
})

it('no water appears or vanishes, whatever comes over a plan', () => {
  fc.assert(fc.property(course, ({ k, happens }) => {
    const session = played(k, happens)
    const balance = balanceOf(session.now.scenario, stateAt(session))
    expect(Math.abs(balance.error_gal)).toBeLessThan(1e-6 * Math.max(1, balance.initial_gal + balance.drawn_gal))
    for (const { points } of readSession(session).levels) for (const { level_gal } of points) expect(level_gal).toBeGreaterThan(-1e-6)
  }), { numRuns: 250 })
})

it('a record has no holes: lines of tenders, levels and flow run on from dispatch to the clock', () => {
  fc.assert(fc.property(course, ({ k, happens }) => {
    const session = played(k, happens)
    const { tenders, levels, flow } = readSession(session)
    for (const { segments } of tenders) segments.forEach((segment, i) => { if (i > 0) expect(segment.from_s).toBeGreaterThanOrEqual(segments[i - 1]!.to_s - 1e-9) })
    for (const { points } of levels) points.forEach(({ time_s }, i) => { if (i > 0) expect(time_s).toBeGreaterThanOrEqual(points[i - 1]!.time_s) })
    flow.forEach(({ from_s }, i) => { if (i > 0) expect(from_s).toBeGreaterThan(flow[i - 1]!.from_s) })
  }), { numRuns: 60 })
})

it('an exercise in which nothing came about has nothing to answer for; one inject alone answers for all that is missing', () => {
  const bundle = bundles[0]!
  const fact = { id: 'stop', at_s: 1800, cause: 'inject' as const, by: '', change: { kind: 'fillRate' as const, fillSiteId: bundle.plan.fillSites[0]!.id as string, rateShare: 0 } }
  expect(effectsOf(bundle, [], 7200)).toEqual([])
  const [effect] = effectsOf(bundle, [fact], 7200)
  expect(effect!.short_s).toBeGreaterThan(600)
  expect(effect!.missing_gal).toBeGreaterThan(1000)
  expect(effect!.recovered_s).toBeUndefined()
})
