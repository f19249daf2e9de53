import { expect, test } from 'vitest'
import { effectiveEvents, mergeEvents } from '@/lib/field-log'
import { siteEventSchema, type SiteEvent } from '@/lib/plan'
import { DAY_MS, event, uuid } from './site-events'

const numbers = (events: readonly SiteEvent[]) => events.map(({ id }) => Number(id.slice(-4)))

test('an event that came twice counts once, in whatever order they came', () => {
  const [a, b, c] = [event(1, 0), event(2, 10), event(3, 5)]
  expect(mergeEvents([a, b], [b, c, a])).toEqual([a, c, b])
  expect(mergeEvents([c], [b, a])).toEqual(mergeEvents([a, b, c]))
})

test('two of one id that differ give the same set whichever came first', () => {
  const [a, b] = [event(1, 0), event(1, 9)]
  expect(mergeEvents([a], [b])).toEqual(mergeEvents([b], [a]))
})

test('a correction stands in the place of what it names, and a correction of it in its own', () => {
  const read = effectiveEvents([event(3, 80, { replaces: uuid(2) }), event(1, 60), event(2, 70, { replaces: uuid(1) })])
  expect(numbers(read.events)).toEqual([3])
  expect(read.replaced.map(({ event: one, by }) => numbers([one, by]))).toEqual([[1, 2], [2, 3]])
})

test('an undo takes its event away; an undo of the undo brings it back', () => {
  const [a, undo, redo] = [event(1, 60), event(2, 61, { retracts: uuid(1) }), event(3, 62, { retracts: uuid(2) })]
  expect(effectiveEvents([a, undo])).toMatchObject({ events: [], retracted: [a] })
  expect(effectiveEvents([a, undo]).undosOf).toEqual(new Map([[a.id, [undo]]]))
  expect(effectiveEvents([redo, a, undo]).events).toEqual([a])
})

test('undone by two, an event is back once all the undos that stand are undone', () => {
  const [a, one, other] = [event(1, 60), event(2, 61, { retracts: uuid(1) }), event(3, 62, { retracts: uuid(1) })]
  const undos = effectiveEvents([a, one, other]).undosOf.get(a.id) ?? []
  expect(undos).toEqual([one, other])
  const back = undos.map(({ id }, k) => event(4 + k, 70, { retracts: id }))
  expect(effectiveEvents([a, one, other, back[0]!])).toMatchObject({ events: [], undosOf: new Map([[a.id, [other]]]) })
  expect(effectiveEvents([a, one, other, ...back]).events).toEqual([a])
})

test('an undone correction leaves what it corrected', () => {
  expect(numbers(effectiveEvents([event(1, 60), event(2, 70, { replaces: uuid(1) }), event(3, 90, { retracts: uuid(2) })]).events)).toEqual([1])
})

test('of two corrections of one event the one made last counts, and both are named', () => {
  const [early, late] = [event(2, 90, { replaces: uuid(1), made_ms: DAY_MS + 100_000 }), event(3, 50, { replaces: uuid(1), made_ms: DAY_MS + 200_000 })]
  const read = effectiveEvents([event(1, 60), late, early])
  expect(read.events).toEqual([late])
  expect(read.rivals).toEqual([{ event: event(1, 60), taken: late, left: [early] }])
})

test('a correction of the losing correction loses nothing twice: one of the family counts', () => {
  const events = [event(1, 60), event(2, 61, { replaces: uuid(1) }), event(3, 62, { replaces: uuid(1) }), event(4, 63, { replaces: uuid(2) })]
  expect(numbers(effectiveEvents(events).events)).toEqual([4])
})

test('an event that one phone undid and another corrected stays as corrected, and is named', () => {
  const read = effectiveEvents([event(1, 60), event(2, 61, { retracts: uuid(1) }), event(3, 70, { replaces: uuid(1) })])
  expect(numbers(read.events)).toEqual([3])
  expect(read.undoneAndCorrected.map(({ by }) => numbers([by]))).toEqual([[3]])
})

test('a correction whose event has not come yet is an event of its own, an undo does nothing', () => {
  expect(numbers(effectiveEvents([event(2, 70, { replaces: uuid(1) }), event(3, 71, { retracts: uuid(9) })]).events)).toEqual([2])
})

test('a ring of corrections loses nothing', () => {
  expect(numbers(effectiveEvents([event(1, 60, { replaces: uuid(2) }), event(2, 70, { replaces: uuid(1) })]).events)).toEqual([1, 2])
})

test('the schema wants a value where a kind has one, and none where it has none', () => {
  expect(siteEventSchema.safeParse(event(1, 0, { kind: 'flow', value: 500 })).success).toBe(true)
  expect(siteEventSchema.safeParse(event(1, 0, { kind: 'flow' })).success).toBe(false)
  expect(siteEventSchema.safeParse(event(1, 0, { kind: 'pressure', value: 700 })).success).toBe(false)
  expect(siteEventSchema.safeParse(event(1, 0, { kind: 'arrived', value: 1 })).success).toBe(false)
  expect(siteEventSchema.safeParse(event(1, 0, { kind: 'note' })).success).toBe(false)
  expect(siteEventSchema.safeParse(event(1, 0, { kind: 'flow', retracts: uuid(2) })).success).toBe(true)
  expect(siteEventSchema.safeParse(event(1, 0, { retracts: uuid(2), replaces: uuid(3) })).success).toBe(false)
})
