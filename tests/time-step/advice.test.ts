import { describe, expect, test } from 'vitest'
import { advise, finish, planWith, type ResolveWays } from '@/lib/advise'
import type { Bundle } from '@/lib/plan'
import type { ShuttleSpec } from '@/lib/shuttle'
import { compilePlan } from '@/lib/supply'
import { adviceBundle } from '../fixtures/advice-bundle'
import { demoBundle, demoRoads } from '../fixtures/demo-roads'
import { stepThrough } from './one-second-model'

const asIs: ResolveWays = (bundle) => bundle
const byRoad = await demoRoads()
const LASTS_S = 7200
const STEP_S = 0.25

function isHeld(spec: ShuttleSpec, flow: number): boolean {
  const reserveFrom = Math.max(0, ...stepThrough(spec, { lastsAfterReady: LASTS_S, step: STEP_S }).dumpedAt.map((times) => times[1] ?? 0))
  const answer = stepThrough(spec, { flow, lastsAfterReady: LASTS_S, reserveFrom, step: STEP_S })
  return answer.readyAt < Infinity && answer.losses === 0 && answer.keptReserve
}

/** Gallons a minute that plain steps bring to the dump in the open, over four hours from the third. */
function hauledBySteps(given: ShuttleSpec): number {
  const spec = { ...given, horizon_s: given.horizon_s + 4 * LASTS_S }
  const sum = (lasts: number) => stepThrough(spec, { lastsAfterReady: lasts, step: STEP_S }).brought.reduce((total, part) => total + part, 0)
  return (sum(3 * LASTS_S) - sum(LASTS_S)) / ((2 * LASTS_S) / 60)
}

describe.each([
  { name: 'small valley', bundle: adviceBundle(), resolve: asIs },
  { name: 'demo barn', bundle: demoBundle('yarrow-bank'), resolve: byRoad },
  { name: 'demo farmhouse', bundle: demoBundle('gander-hill'), resolve: byRoad },
])('the first change that helps the $name', ({ bundle, resolve }: { name: string; bundle: Bundle; resolve: ResolveWays }) => {
  const advice = finish(advise(bundle, resolve))
  const [top] = advice?.ranked.helpful ?? []
  if (!top) throw new Error('nothing helps')
  const changed = planWith(bundle.plan, top.candidate.edits)
  if ('code' in changed) throw new Error(changed.code)
  const [before, after] = [compilePlan(bundle).spec, compilePlan(resolve({ ...bundle, plan: changed.plan })).spec] as [ShuttleSpec, ShuttleSpec]

  // The two models differ by up to 1 % in the flow held (lib/shuttle/README.md), so by up to 1 % of each of two flows in a gain.
  test('is held by plain time steps too, where the plan as it is holds less', () => {
    expect(isHeld(before, 0.99 * top.before.flow_gpm)).toBe(true)
    expect(isHeld(after, 0.99 * top.after.flow_gpm)).toBe(true)
    if (top.before.limitedBy !== 'haul' && top.before.limitedBy !== 'brought') expect(isHeld(before, top.before.flow_gpm + 0.5 * top.gain_gpm)).toBe(false)
  })

  test('hauls as much more by plain time steps', () => {
    const gain_gpm = hauledBySteps(after) - hauledBySteps(before)
    const expected_gpm = top.after.hauled_gpm - top.before.hauled_gpm
    process.stdout.write(`${top.candidate.id}: hauled gain ${expected_gpm.toFixed(1)} gpm, by steps ${gain_gpm.toFixed(1)}; flow ${top.before.flow_gpm.toFixed(1)} to ${top.after.flow_gpm.toFixed(1)}\n`)
    // A window of whole rounds against four hours by the clock: one load more or less at either end.
    const largest_gal = Math.max(...after.tenders.map(({ usable_gal }) => usable_gal))
    expect(Math.abs(gain_gpm - expected_gpm)).toBeLessThan(0.01 * top.after.hauled_gpm + (2 * largest_gal) / ((2 * LASTS_S) / 60))
  })
})
