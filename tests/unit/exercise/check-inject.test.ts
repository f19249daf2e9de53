import { expect, it } from 'vitest'
import { checkInject, playSession, startSession, type Session } from '@/lib/exercise'
import type { Change, Trigger } from '@/lib/plan'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle()
const session = playSession(startSession(bundle) as Session, 1200)
const [dumpSiteId, fillSiteId] = [bundle.plan.dumpSites[0]!.id as string, bundle.plan.fillSites[0]!.id as string]
const codeOf = (change: Change, trigger: Trigger = { kind: 'hand' }) => checkInject(session, { id: 'x', title: 'x', change, trigger })?.code

it('lets pass what can come', () => {
  expect(codeOf({ kind: 'tankLeak', dumpSiteId, leak_gpm: 90 })).toBeUndefined()
  expect(codeOf({ kind: 'fillRate', fillSiteId, rateShare: 1 }, { kind: 'time', at_s: 1200 })).toBeUndefined()
  expect(codeOf({ kind: 'moreDemand', add_gpm: 100 }, { kind: 'level', dumpSiteId, belowShare: 0.3 })).toBeUndefined()
})

it('says one thing: what changes nothing, names what is not there, or lies behind', () => {
  expect(codeOf({ kind: 'moreDemand', add_gpm: 0 })).toBe('exercise-inject-idle')
  expect(codeOf({ kind: 'sourceLow', fillSiteId, leftShare: 1 })).toBe('exercise-inject-idle')
  expect(codeOf({ kind: 'tankTips', dumpSiteId: 'nowhere', lostShare: 1 })).toBe('exercise-names-nothing')
  expect(codeOf({ kind: 'moreDemand', add_gpm: 100 }, { kind: 'time', at_s: 1199 })).toBe('exercise-inject-past')
  expect(codeOf({ kind: 'moreDemand', add_gpm: 100 }, { kind: 'level', dumpSiteId: 'nowhere', belowShare: 0.3 })).toBe('exercise-names-nothing')
  expect(codeOf({ kind: 'roadOpened', roadId: 'none' })).toBe('exercise-names-nothing')
})
