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

  test('of one time is no surer than a guess', () => { expect(meanWithDoubt([60]).spreadShare).toBe(0.3) })

  test('says nothing where too many lie far apart', () => {
    expect(meanWithDoubt([100, 103, 600, 20]).isScattered).toBe(true)
    expect(meanWithDoubt([56, 58, 62, 64]).isScattered).toBe(false)
  })

  // 1 of 9 at 186 and 1 at 8,002 gpm beside seven near 418.
  test('keeps fill rates that no pump gives out of the mean', () => {
    expect(meanWithDoubt([186, 396, 410, 415, 418, 422, 428, 430, 8002])).toMatchObject({ count: 7, low: 396, high: 430, isScattered: false })
  })

  test('leaves out what was pressed at another moment', () => { expect(meanWithDoubt([60, 62, 58, 400])).toMatchObject({ value: 60, count: 3 }) })
})

const bundles = new Map(['gander-hill', 'yarrow-bank'].map((name) => [`plan-${name}`, demoBundle(name as 'gander-hill' | 'yarrow-bank')]))
const logs = demoLogs(bundles).map(({ log, events }) => ({ log, spec: compilePlan(log.planned!).spec!, measures: reviewEvents(log, events).measures }))

describe.each(logs.map((one) => [one.log.name, one] as const))('%s', (_, { spec, measures }) => {
  const offered = measures.filter(({ withheld }) => withheld === undefined)

  test('a dump that a full tank held back is never found as the tender’s own rate', () => {
    const planned = new Map(spec.tenders.map(({ id, dumpRate_gpm }) => [id, dumpRate_gpm.reduce((sum, one) => sum + one, 0) / dumpRate_gpm.length]))
    for (const { itemId, value } of measures.filter(({ field }) => field.startsWith('dump') && field.endsWith('gpm'))) expect(value).toBeGreaterThan(0.7 * planned.get(itemId)!)
  })

  test('what is offered was seen more than once and is surer than a guess', () => {
    expect(offered.length).toBeGreaterThan(10)
    for (const { count, spreadShare } of offered) {
      expect(count).toBeGreaterThan(1)
      expect(spreadShare).toBeLessThan(0.3)
    }
  })

  test('no fill rate is beyond what the plan’s pump gives there, and no position holds waiting', () => {
    const rates = offered.filter(({ field }) => field === 'rate_gpm')
    expect(rates.length).toBeGreaterThan(0)
    for (const { itemId, high } of rates) expect(high).toBeLessThan(1.5 * spec.fills.find(({ id }) => id === itemId)!.bayRate_gpm[0]!)
    for (const { high, itemId } of offered.filter(({ field }) => field === 'dumpPosition_s')) expect(high).toBeLessThan(2.5 * spec.tenders.find(({ id }) => id === itemId)!.dumpPosition_s)
  })
})

test('a stay far beyond what all took is listed as odd, and a road driven in half the time of all others', () => {
  const odd = logs.flatMap(({ measures }) => measures.filter(({ withheld }) => withheld === 'odd'))
  expect(odd).toContainEqual(expect.objectContaining({ itemId: 'tender-22', field: 'dumpPosition_s' }))
  expect(odd).toContainEqual(expect.objectContaining({ itemId: 'tender-22', field: 'travel_s', fromId: 'fill-covered-bridge' }))
})
