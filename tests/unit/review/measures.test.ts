import { describe, expect, test } from 'vitest'
import { demoLogs } from '@/app/_demo/documents/demo-logs'
import { meanWithDoubt, reviewEvents } from '@/lib/review'
import { compilePlan } from '@/lib/supply'
import { demoBundle } from '@/tests/fixtures/demo-roads'

describe('a mean with its doubt', () => {
  // Two standard errors of the mean, by hand: mean 60, s = 4, √4 = 2.
  test('is two standard errors wide', () => {
    const { value, spreadShare } = meanWithDoubt([56, 58, 62, 64])
    expect(value).toBe(60)
    expect(spreadShare).toBeCloseTo((2 * Math.sqrt(40 / 3 / 4)) / 60, 12)
  })

  test('is never surer than another night, and one or two times say little', () => {
    expect(meanWithDoubt([60, 60, 60, 60]).spreadShare).toBe(0.03)
    expect(meanWithDoubt([60, 60]).spreadShare).toBe(0.15)
  })

  test('leaves out what was pressed at another moment', () => { expect(meanWithDoubt([60, 62, 58, 400])).toMatchObject({ value: 60, count: 3 }) })
})

test('a dump that a full tank held back is never offered as the tender’s own rate', () => {
  const bundle = demoBundle('gander-hill')
  const [{ log, events }] = demoLogs(new Map([['plan-gander-hill', bundle]])) as [ReturnType<typeof demoLogs>[number]]
  const planned = new Map(compilePlan(bundle).spec!.tenders.map(({ id, dumpRate_gpm }) => [id, dumpRate_gpm.reduce((sum, one) => sum + one, 0) / dumpRate_gpm.length]))
  for (const { itemId, value } of reviewEvents(log, events).measures.filter(({ field }) => field.startsWith('dump') && field.endsWith('gpm'))) expect(value).toBeGreaterThan(0.7 * planned.get(itemId)!)
})
