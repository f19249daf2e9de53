import { expect, it } from 'vitest'
import { factOf, isSession, nextEventAt, nextMoment, playSession, readSession, startSession, takeEffect, type Session } from '@/lib/exercise'
import type { Inject } from '@/lib/plan'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle('yarrow-bank')
const dumpSiteId = bundle.plan.dumpSites[0]!.id
const more: Inject = { id: 'more', title: 'Second building', trigger: { kind: 'time', at_s: 2280 }, change: { kind: 'moreDemand', add_gpm: 250 } }
const low: Inject = { id: 'low', title: 'Tank leaks', trigger: { kind: 'level', dumpSiteId, belowShare: 0.5, from_s: 0 }, change: { kind: 'tankLeak', dumpSiteId, leak_gpm: 100 } }
const begun = (...injects: Inject[]) => startSession(bundle, injects) as Session

it('goes from one thing that matters to the next, and never to a tender that changes its place', () => {
  let session = begun(more)
  const seen: string[] = []
  const stops: number[] = []
  for (let k = 0; k < 12; k++) {
    const next = nextMoment(session)!
    expect(next.at_s).toBeGreaterThan(session.clock_s)
    seen.push(next.kind)
    stops.push(next.at_s)
    session = playSession(session, next.at_s)
  }
  expect(seen).not.toContain('other')
  expect(seen).toContain('supply-ready')
  expect(seen).toContain('trouble')
  // Of what has come by then, nothing was passed over.
  const telling = ['first-water', 'supply-ready', 'engine-empty', 'draft-lost', 'draft-back', 'source-empty']
  const { log } = readSession(session)
  for (const { time_s } of log.filter(({ kind }) => telling.includes(kind))) expect(stops).toContain(time_s)
})

it('is the trouble where that comes first, by the clock or by a level', () => {
  const late = playSession(begun(), 2250)
  expect(nextMoment({ ...late, armed: [{ ...more, trigger: { kind: 'time', at_s: 2251 } }] })).toEqual({ at_s: 2251, kind: 'trouble', title: 'Second building' })
  const moments: string[] = []
  let session = begun(low)
  for (let k = 0; k < 8 && !moments.includes('trouble'); k++) {
    const next = nextMoment(session)!
    moments.push(next.kind)
    session = playSession(session, next.at_s)
  }
  expect(moments).toContain('trouble')
})

it('is whatever is next where nothing of the water changes any more', () => {
  const session = playSession(begun(), 5400)
  const stopped = takeEffect(session, factOf({ id: 'none', title: '', trigger: { kind: 'hand' }, change: { kind: 'demand', flow_gpm: 0 } }, 5400))
  if (!isSession(stopped)) throw new Error(JSON.stringify(stopped))
  const after = playSession(stopped, 9000)
  const next = nextMoment(after)
  if (next) expect(next.kind === 'other' ? next.at_s : nextEventAt(after)).toBeGreaterThan(after.clock_s)
})
