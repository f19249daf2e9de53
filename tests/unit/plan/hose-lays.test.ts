import { describe, expect, test } from 'vitest'
import { applyEdit, checkReferences, type EditBody, type Plan } from '@/lib/plan'
import { smallBundle } from '../../fixtures/bundle'

const item = {
  id: 'lay1', name: 'Pond to barn', fromId: 'so1', toId: 'du1', points: [{ lat: 45.02, lon: -40 }, { lat: 45.01, lon: -40 }], pumperIds: ['p1'],
  stretches: [{ id: 's1', size_in: 5 }],
}
const applied = (plan: Plan, body: EditBody) => {
  const done = applyEdit(plan, body)
  if ('code' in done) throw new Error(JSON.stringify(done))
  return done
}

describe('hose lays of a plan', () => {
  test('one is added, changed and taken away, and each way back leads home', () => {
    const { plan } = smallBundle()
    const added = applied(plan, { kind: 'addItem', collection: 'hoseLays', item })
    expect(added.doc.hoseLays).toEqual([item])
    const changed = applied(added.doc, { kind: 'setFields', collection: 'hoseLays', id: 'lay1', set: { wanted_gpm: 500 }, evidence: { wanted_gpm: { mark: 'assumed' } } })
    expect(changed.doc.hoseLays![0]).toMatchObject({ wanted_gpm: 500, evidence: { wanted_gpm: { mark: 'assumed' } } })
    expect(applied(changed.doc, changed.inverse).doc.hoseLays).toEqual([item])
    const removed = applied(changed.doc, { kind: 'removeItem', collection: 'hoseLays', id: 'lay1' })
    expect(removed.doc.hoseLays).toEqual([])
    expect(applied(removed.doc, removed.inverse).doc.hoseLays).toEqual(changed.doc.hoseLays)
  })

  test.each([
    ['one point', { points: item.points.slice(1) }],
    ['no hose', { stretches: [] }],
    ['hose of no size', { stretches: [{ id: 's1', size_in: 0 }] }],
  ])('a lay with %s is refused', (_, changes) => {
    expect('code' in applyEdit(smallBundle().plan, { kind: 'addItem', collection: 'hoseLays', item: { ...item, ...changes } })).toBe(true)
  })

  test('both ends and every pumper must resolve; a source, a draft site and the fire ground will do', () => {
    const missing = (changes: object) => checkReferences(smallBundle({ 'plan.hoseLays': [{ ...item, ...changes }] })).filter(({ code }) => code === 'id-unresolved').map(({ values }) => values.id)
    expect(missing({})).toEqual([])
    expect(missing({ fromId: 'ds1', toId: 'fireGround' })).toEqual([])
    expect(missing({ fromId: 'gone', toId: 'away', pumperIds: ['p1', 'none'] })).toEqual(['gone', 'away', 'none'])
  })
})
