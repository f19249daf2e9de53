import fc from 'fast-check'
import { expect, test } from 'vitest'
import { effectiveEvents, logCsv, mergeEvents, readLogCsv } from '@/lib/field-log'
import { siteEventSchema, type SiteEvent } from '@/lib/plan'
import { event, uuid } from '../../unit/field-log/site-events'

/** Events of which some correct and some undo others, rings among them. */
const anyEvents = fc.array(fc.record({ at_s: fc.integer({ min: 0, max: 7200 }), link: fc.constantFrom('none', 'replaces', 'retracts'), to: fc.nat(30), device: fc.constantFrom('a', 'b', 'c'), note: fc.option(fc.oneof(fc.string({ minLength: 1, maxLength: 30 }), fc.string({ unit: fc.constantFrom('=', "'", '"', ',', '+', '\n', 'a', ';'), minLength: 1, maxLength: 8 }))) }), { maxLength: 30 })
  .map((list) => list.map(({ at_s, link, to, device, note }, index): SiteEvent =>
    event(index, at_s, { device, ...(note !== null && note.trim() !== '' && { note: note.trim() }), ...(link !== 'none' && to !== index && { [link]: uuid(to % (list.length + 2)) }) })))

const shuffled = (events: readonly SiteEvent[], keys: readonly number[]) => events.map((one, i) => ({ one, key: keys[i % keys.length] ?? 0 })).sort((a, b) => a.key - b.key).map(({ one }) => one)

test('whatever the order of arrival, and however often, the same events count', () => {
  fc.assert(fc.property(anyEvents, fc.array(fc.integer(), { minLength: 31, maxLength: 31 }), fc.nat(30), (events, keys, cut) => {
    const other = shuffled(events, keys)
    const merged = mergeEvents(other.slice(0, cut), other.slice(Math.max(0, cut - 5)), events.slice(0, 3), events)
    expect(merged).toEqual(mergeEvents(events))
    expect(effectiveEvents([...other, ...other])).toEqual(effectiveEvents(events))
    expect(mergeEvents(mergeEvents(events))).toEqual(mergeEvents(events))
  }), { seed: 11 })
})

test('undoing the newest event and undoing the undo is as if nothing had been', () => {
  fc.assert(fc.property(anyEvents, (events) => {
    const before = effectiveEvents(events).events
    const last = before.at(-1)
    if (!last) return
    const undo = event(100, 8000, { retracts: last.id })
    const redo = event(101, 8001, { retracts: undo.id })
    expect(effectiveEvents([...events, undo]).events).not.toContainEqual(last)
    expect(effectiveEvents([...events, undo, redo]).events).toEqual(before)
  }), { seed: 12 })
})

test('a table is read back to the same events, whatever is in the notes', () => {
  const world = { units: [{ id: 'T1', name: '=Tender, "1"', isTender: true }], sites: [{ id: 'D', name: 'Barn', kind: 'dump' as const }] }
  fc.assert(fc.property(anyEvents, (given) => {
    const events = mergeEvents(given.filter((one) => siteEventSchema.safeParse(one).success).map((one) => siteEventSchema.parse(one)))
    if (events.length === 0) return
    const read = readLogCsv(logCsv(events, world), { logId: 'log', world, known: [], momentOf: (time_s) => time_s })
    expect(read.issues).toEqual([])
    expect(read.events).toEqual(events)
  }), { seed: 13 })
})
