import { expect, test } from 'vitest'
import { finish, requestList } from '@/lib/advise'
import { shippedBundle } from '../demo/shipped-demo'

/* A smaller set may have just the people for one more position; whether they come in time is in doubt. */
test('a set whose people decide how many positions open has a dependable flow', () => {
  const list = finish(requestList(shippedBundle('plan-gander-hill'), { flow_gpm: 250, by_s: 1800 }, (bundle) => bundle))
  if (Array.isArray(list)) throw new RangeError('no list')
  expect(list.dependable_gpm).toBeGreaterThan(0)
  expect(list.dependable_gpm).toBeLessThanOrEqual(list.flow_gpm)
})

/* Engine 21 is there first and waits: 1,024 s less 314 s less 300 s of setting up leaves 410 s. */
test('a pumper is there before it is ready, by setting up and by what it waits for', () => {
  const list = finish(requestList(shippedBundle('plan-school'), { flow_gpm: 250, by_s: 1800 }, (bundle) => bundle))
  if (Array.isArray(list)) throw new RangeError('no list')
  for (const { task, arrive_s, ready_s, setUp_s } of list.lines) {
    if (task === 'tender') expect(ready_s).toBeUndefined()
    else expect(ready_s).toBeGreaterThanOrEqual(arrive_s + (setUp_s ?? 0))
  }
  const cistern = list.lines.find(({ siteId }) => siteId === 'fill-cistern')
  expect((cistern?.ready_s ?? 0) - (cistern?.arrive_s ?? 0) - (cistern?.setUp_s ?? 0)).toBeCloseTo(410.3, 0)
})
