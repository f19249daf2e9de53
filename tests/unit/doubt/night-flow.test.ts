import { expect, test } from 'vitest'
import { nightFlow } from '@/lib/doubt'
import { compileShuttle, sustainableFlow, type ShuttleSpec } from '@/lib/shuttle'
import { dumpSite, fillSite, layout, tender } from '../shuttle/layout'

const AMPLE_GPM = 10_000
const GRID_GPM = 5

/** The night of a plan in which nothing is in doubt holds what the plan sustains. */
const expectSame = (spec: ShuttleSpec): void => {
  const held = sustainableFlow(compileShuttle(spec))
  expect(held.flow_gpm).toBeGreaterThan(0)
  expect(nightFlow(spec, AMPLE_GPM, GRID_GPM).flow_gpm).toBeLessThanOrEqual(held.flow_gpm + held.resolution_gpm)
}

const three = [tender({ id: 'a' }), tender({ id: 'b', arrive_s: 120 }), tender({ id: 'c', arrive_s: 240 })]

test('a night without doubt sustains no more than the plan does', () => {
  expectSame(layout({ tenders: three }))
})

test('what leaks from the tanks is not counted on in a night either', () => {
  expectSame(layout({ tenders: three, dumps: [dumpSite({ leak_gpm: 60, capacity_gal: 60_000, startsFull: true })] }))
})

test('where tenders choose their dump site, a night lives on what all sites are hauled together', () => {
  const dumps = [dumpSite({ id: 'd1', demandShare: 0.5 }), dumpSite({ id: 'd2', demandShare: 0.5 })]
  const ways = [0, 1].map((dumpIndex) => ({ fillIndex: 0, dumpIndex, toFill_s: 300, toDump_s: 300 }))
  expectSame(layout({ fills: [fillSite()], dumps, tenders: three.map((one) => ({ ...one, ways })) }))
})
