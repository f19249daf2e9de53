import { describe, expect, test } from 'vitest'
import type { Bundle, Plan } from '@/lib/plan'
import { compilePlan, legUses } from '@/lib/supply'
import { demoBundle, demoRoads } from '../../fixtures/demo-roads'

const byRoad = await demoRoads()
const bundle = demoBundle('yarrow-bank')
const [fill] = bundle.plan.fillSites
const [dump] = bundle.plan.dumpSites
const withVia = (fromId: string, toId: string, north = 0.004): Bundle => {
  // A place beside the straight line between the sites: whatever road passes it, it is not the quickest.
  const via = [{ lat: fill!.point.lat + north, lon: (fill!.point.lon + dump!.point.lon) / 2 }]
  const legNotes = [...bundle.plan.legNotes.filter((note) => note.fromId !== fromId || note.toId !== toId), { id: 'leg-via', fromId, toId, via }] as Plan['legNotes']
  return byRoad({ ...bundle, plan: { ...bundle.plan, legNotes } })
}
const times = (one: Bundle) => {
  const { spec } = compilePlan(one)
  if (!spec) throw new Error('the plan is blocked')
  return { full: spec.tenders.map(({ toDump_s }) => toDump_s), empty: spec.tenders.map(({ toFill_s }) => toFill_s) }
}

describe('a road chosen for one direction', () => {
  const plain = times(byRoad(bundle))

  test('of empty tenders leaves the way of loaded ones as it is', () => {
    const sent = times(withVia(dump!.id, fill!.id))
    expect(sent.full).toEqual(plain.full)
    sent.empty.forEach((time_s, k) => { expect(time_s).toBeGreaterThan(plain.empty[k]!) })
  })

  test('of loaded tenders leaves the way of empty ones as it is', () => {
    const sent = times(withVia(fill!.id, dump!.id, -0.012))
    expect(sent.empty).toEqual(plain.empty)
    sent.full.forEach((time_s, k) => { expect(time_s).toBeGreaterThan(plain.full[k]!) })
  })

  test('is asked of the roads under a key of its own', () => {
    const keys = (one: Bundle, load: string) => legUses(one).filter((use) => use.load === load && [use.fromId, use.toId].includes(fill!.id) && [use.fromId, use.toId].includes(dump!.id)).map(({ key }) => key)
    const sent = withVia(dump!.id, fill!.id)
    expect(keys(sent, 'full')).toEqual(keys(bundle, 'full'))
    expect(keys(sent, 'empty')).not.toEqual(keys(bundle, 'empty'))
  })
})
