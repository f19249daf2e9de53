import { describe, expect, it } from 'vitest'
import { isSession, playSession, readSession, replaceSite, startSession, takeEffect, viewOf, type Session } from '@/lib/exercise'
import type { Change, EditBody } from '@/lib/plan'
import { demoRoads } from '@/tests/fixtures/demo-roads'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle('gander-hill')
const resolve = await demoRoads()
const begun = startSession(bundle) as Session
const [fill, dump] = [bundle.plan.fillSites[0]!, bundle.plan.dumpSites[0]!]

/** A decision about the plan, with the ways that it drives. */
function decided(session: Session, edits: readonly EditBody[]): Session {
  const change: Change = { kind: 'plan', edits: edits.map((body) => ({ doc: 'plan', body })) }
  const tried = takeEffect(session, { id: 'try', at_s: session.clock_s, cause: 'decision', by: '', change })
  const world = isSession(tried) ? tried.now.world.bundle : undefined
  const legs = world ? resolve(world).legs.filter(({ key }) => !world.legs.some((leg) => leg.key === key)) : []
  const made = takeEffect(session, { id: `d${session.facts.length}`, at_s: session.clock_s, cause: 'decision', by: '', change: { ...change, legs } })
  if (!isSession(made)) throw new Error(JSON.stringify(made))
  return made
}
const flowAfter = (session: Session, wait_s: number) => readSession(playSession(session, session.clock_s + wait_s)).flow.at(-1)!.flow_gpm

describe('bays and positions', () => {
  it('one more takes one more tender from that moment on, and one less sends it back to the line', () => {
    const session = playSession(begun, 2700)
    const more = decided(session, [{ kind: 'setFields', collection: 'dumpSites', id: dump.id, set: { positionCount: (dump.positionCount ?? 1) + 1 } }])
    expect(more.now.world.spec.dumps[0]!.positionCount).toBe(session.now.world.spec.dumps[0]!.positionCount + 1)
    const less = decided(playSession(more, 3600), [{ kind: 'setFields', collection: 'dumpSites', id: dump.id, set: { positionCount: 1 } }])
    expect(less.now.world.spec.dumps[0]!.positionCount).toBe(1)
    const dumping = viewOf(less).tenders.filter(({ phase }) => ['takes-position', 'dumps', 'clears-position'].includes(phase))
    expect(dumping.length).toBeLessThanOrEqual(1)
    expect(flowAfter(less, 3600)).toBeGreaterThan(0)
  })
})

describe('a site that is set up anew', () => {
  it('is not there before its pumper has come from its station and set up, and everyone follows', () => {
    const session = playSession(begun, 2400)
    const place = bundle.district.draftSites.find(({ id }) => id !== fill.draftSiteId)!
    const moved = decided(session, replaceSite(bundle, fill.id, { point: place.point, draftSiteId: place.id, name: place.name }, 'fill-new'))
    const [site] = moved.now.world.spec.fills
    expect(site!.id).toBe('fill-new')
    expect(site!.ready_s).toBeGreaterThan(2400 + 60)
    expect(moved.now.world.spec.tenders.every(({ fillIndex }) => fillIndex === 0)).toBe(true)
    // What was measured at the old place is not true of the new one.
    expect(moved.now.world.bundle.plan.fillSites[0]).not.toHaveProperty('rate_gpm')
    expect(flowAfter(moved, 7200)).toBeGreaterThanOrEqual(0)
  })

  it('with another pumper is well again, though the pump of the first has stopped', () => {
    const stopped = takeEffect(playSession(begun, 2400), { id: 'stop', at_s: 2400, cause: 'inject', by: '', change: { kind: 'fillRate', fillSiteId: fill.id, rateShare: 0, fault: 'pump' } }) as Session
    const busy = new Set<string | undefined>([bundle.plan.firstDueId, ...[...bundle.plan.fillSites, ...bundle.plan.dumpSites].map(({ pumperId }) => pumperId as string | undefined)])
    const other = bundle.district.apparatus.find(({ id, kind }) => kind === 'pumper' && !busy.has(id))!
    const swapped = decided(stopped, replaceSite(bundle, fill.id, { pumperId: other.id }, 'fill-other'))
    expect(flowAfter(stopped, 7200)).toBe(0)
    expect(flowAfter(swapped, 7200)).toBeGreaterThan(0)
    const kept = swapped.now.world.bundle.plan.fillSites[0]!
    expect([kept.point, kept.draftSiteId]).toEqual([fill.point, fill.draftSiteId])
  })

  it('leaves what speaks of no site as it is', () => {
    expect(replaceSite(bundle, 'nowhere', {}, 'x')).toEqual([])
  })
})

describe('what is brought in', () => {
  it('is refused with its reason where it would take no part', () => {
    const session = playSession(begun, 1200)
    const lay = { id: 'lay', name: 'Relay', fromId: fill.draftSiteId!, toId: dump.id, points: [fill.point, dump.point], pumperIds: [], stretches: [{ id: 's', size_in: 5 }] }
    const made = takeEffect(session, { id: 'x', at_s: 1200, cause: 'decision', by: '', change: { kind: 'plan', edits: [{ doc: 'plan', body: { kind: 'addItem', collection: 'hoseLays', item: lay } }] } })
    expect(Array.isArray(made) && made.map(({ code }) => code)).toContain('exercise-not-counted')
  })

  it('a hose lay brings its flow once it has been laid from that moment, and nothing before', () => {
    const session = playSession(begun, 1200)
    const busy = new Set<string | undefined>([bundle.plan.firstDueId, ...[...bundle.plan.fillSites, ...bundle.plan.dumpSites].map(({ pumperId }) => pumperId as string | undefined)])
    const pumpers = bundle.district.apparatus.filter(({ id, kind }) => kind === 'pumper' && !busy.has(id)).map(({ id }) => id)
    const near = { lat: dump.point.lat + 0.004, lon: dump.point.lon }
    const source = bundle.district.draftSites.find(({ id }) => id === fill.draftSiteId)!
    const lay = { id: 'lay', name: 'Relay', fromId: source.id, toId: dump.id, points: [near, dump.point], pumperIds: pumpers.slice(0, 2), rise_ft: 0, stretches: [{ id: 's', size_in: 5 }] }
    const made = decided(session, [{ kind: 'addItem', collection: 'hoseLays', item: lay }])
    const [feed] = made.now.world.spec.feeds!
    expect(feed!.ready_s).toBeGreaterThan(1200 + 60)
    expect(feed!.flow_gpm).toBeGreaterThan(100)
    expect(made.now.world.planned.feeds![0]!.ready_s).toBeCloseTo(feed!.ready_s - 1200, 6)
  })
})
