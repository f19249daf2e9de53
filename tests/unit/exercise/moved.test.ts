import { expect, it } from 'vitest'
import { isSession, movedLately, playSession, readSession, startSession, takeEffect, type Session } from '@/lib/exercise'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle()
const session = playSession(startSession(bundle) as Session, 3000)

/** Water that came, by the steps of the record: the second opinion. */
function delivered_gal(of: Session, from_s: number): number {
  const { flow } = readSession(of)
  return flow.reduce((sum, { from_s: since_s, flow_gpm }, k) => {
    const [a, b] = [Math.max(from_s, since_s), Math.min(of.clock_s, flow[k + 1]?.from_s ?? of.clock_s)]
    return sum + (b > a ? (flow_gpm * (b - a)) / 60 : 0)
  }, 0)
}

it('is what the record says has come, over the last ten minutes', () => {
  const moved = movedLately(session)!
  expect(moved.over_s).toBe(600)
  expect(moved.delivered_gpm * 10).toBeCloseTo(delivered_gal(session, 2400), 6)
})

it('counts over a fact as if nothing had been cut there, and nothing before dispatch', () => {
  const made = takeEffect(session, { id: 'd', at_s: 3000, cause: 'decision', by: '', change: { kind: 'demand', flow_gpm: 300 } })
  if (!isSession(made)) throw new Error(JSON.stringify(made))
  const later = playSession(made, 3300)
  expect(movedLately(later)!.delivered_gpm * 10).toBeCloseTo(delivered_gal(later, 2700), 6)
  expect(movedLately(startSession(bundle) as Session)).toBeUndefined()
  expect(movedLately(playSession(startSession(bundle) as Session, 120))!.over_s).toBe(120)
})
