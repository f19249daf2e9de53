import { describe, expect, test } from 'vitest'
import { applyEdit, isBundle, readBundle } from '@/lib/plan'
import { measureKey, reviewCsv, reviewEvents, saysTheSame, storedFor, takeMeasure, takeMeasures } from '@/lib/review'
import { compilePlan } from '@/lib/supply'
import { demoBundle } from '@/tests/fixtures/demo-roads'
import { loggedDrill } from '@/tests/fixtures/logged-drill'

const bundle = demoBundle('gander-hill')
const options = { id: 'log-1', name: 'Spring drill', seed: 7, roadFactor: 1.3, dropShare: 0.08, clock_s: 240, isOneMissing: true }
const { log, events } = loggedDrill(bundle, options)
const review = reviewEvents(log, events)

describe('the review of a logged drill', () => {
  test('finds the flow, lays the clocks on one and says what it assumed', () => {
    expect(review.loads.length).toBeGreaterThan(10)
    expect(Math.abs(Math.abs(review.clocks.find(({ basis }) => basis !== 'reference')!.shift_s) - 240)).toBeLessThan(60)
    expect(new Set(review.assumptions.map(({ kind }) => kind))).toContain('missing')
  })

  test('splits the difference into causes that add up, and finds those that were put in', () => {
    const { planned_gpm, achieved_gpm, parts, unexplained_gpm, bound_gpm } = review.difference!
    expect(parts.reduce((sum, { gpm }) => sum + gpm, 0) + unexplained_gpm).toBeCloseTo(achieved_gpm - planned_gpm, 6)
    expect(Math.abs(unexplained_gpm)).toBeLessThanOrEqual(bound_gpm)
    const of = (cause: string) => parts.find((part) => part.cause === cause)!.gpm
    expect(of('travel')).toBeLessThan(0)
    expect(of('tenders')).toBeLessThan(0)
    for (const { cause, gpm } of parts) if (cause !== 'travel' && cause !== 'tenders') expect(gpm).toBeGreaterThan(Math.min(of('travel'), of('tenders')))
  })

  test('a measured time goes into the district as an edit that can be taken back, and narrows its doubt', () => {
    const measure = review.measures.filter(({ field }) => field === 'dumpPosition_s').sort((a, b) => a.spreadShare - b.spreadShare)[0]!
    const edit = takeMeasure(bundle.district, measure, { by: 'Fill site officer', on: log.date, source: 'log' }, 'x')!
    const applied = applyEdit(bundle.district, edit)
    if ('code' in applied) throw new Error(applied.code)
    const unit = applied.doc.apparatus.find(({ id }) => id === measure.itemId)!
    expect(unit.evidence?.dumpPosition_s).toMatchObject({ mark: 'measured', by: 'Fill site officer', on: '2026-05-16' })
    const doubt = (district: typeof bundle.district) => [...compilePlan({ ...bundle, district }).ledger.numbers.values()].find(({ itemId, field }) => itemId === measure.itemId && field === 'dumpPosition_s')!.spreadShare
    expect(doubt(applied.doc)).toBeLessThan(doubt(bundle.district))
    const back = applyEdit(applied.doc, applied.inverse)
    expect('code' in back ? back.code : back.doc).toEqual(bundle.district)
  })

  test('a measured road goes into the plan, and the plan then drives it', () => {
    const measure = review.measures.find(({ field }) => field === 'travel_s')!
    const edit = takeMeasure(bundle.plan, measure, { on: log.date, source: 'log' }, 'note-from-log')!
    const applied = applyEdit(bundle.plan, edit)
    if ('code' in applied) throw new Error(applied.code)
    const again = readBundle({ ...bundle, plan: applied.doc })
    if (!isBundle(again)) throw new Error('the plan is no plan any more')
    const way = compilePlan(again).ways.find(measure.itemId, measure.fromId!, measure.toId!)
    expect(way).toMatchObject({ by: 'measured', travel_s: Math.round(measure.value * 10) / 10 })
  })

  test('all are taken at once, each as it would be alone but points of a pump test, and none is offered again', () => {
    const offered = review.measures.filter(({ withheld }) => withheld === undefined)
    let made = 0
    const acts = takeMeasures(bundle, [...offered, { ...offered[0]!, field: 'curvePoints', netPressure_psi: 150 }], ({ count }) => ({ on: log.date, source: `log, ${count}` }), () => `note-${++made}`)
    expect(acts.reduce((sum, { bodies }) => sum + bodies.length, 0)).toBe(offered.length)
    const after = acts.map(({ doc, bodies }) => bodies.reduce((before, body) => {
      const applied = applyEdit(before, body)
      if ('code' in applied) throw new Error(applied.code)
      return applied.doc
    }, doc))
    for (const measure of offered) {
      const doc = after.find((one) => one.id === (measure.doc === 'district' ? bundle.district.id : bundle.plan.id))!
      const stored = storedFor(doc, measure)
      expect(stored, measureKey(measure)).toMatchObject({ value: Math.round(measure.value * 10) / 10, evidence: { mark: 'measured', source: `log, ${measure.count}` } })
      expect(saysTheSame(stored, measure)).toBe(true)
      expect(saysTheSame({ ...stored, evidence: { mark: 'assumed' } }, measure)).toBe(false)
      expect(saysTheSame({ ...stored, value: measure.value + 2 }, measure)).toBe(false)
    }
  })

  test('the CSV holds every load, with names that a spreadsheet takes for text', () => {
    const rows = reviewCsv(review, (id) => (id.startsWith('tender') ? `=${id}` : `A "site", north`)).split('\r\n')
    expect(rows.filter((row) => row.endsWith(',no') || row.endsWith(',yes'))).toHaveLength(review.loads.length)
    expect(rows.join('\n')).not.toMatch(/^=/m)
    expect(rows.join('\n')).toContain('"A ""site"", north"')
  })

  test('a log with no event, one event, or without a plan is reviewed without an error', () => {
    expect(reviewEvents(log, [])).toMatchObject({ loads: [], measures: [], end_s: 0 })
    expect(reviewEvents(log, events.slice(0, 1)).difference).toBeUndefined()
    const { planned: _, ...bare } = log
    const plain = reviewEvents(bare, events, bundle.district)
    expect(plain.loads.length).toBe(review.loads.length)
    expect(plain.achieved_gpm).toBeGreaterThan(0)
    expect(reviewEvents({ ...bare, dispatched_ms: undefined }, events, bundle.district).loads.length).toBe(review.loads.length)
  })
})
