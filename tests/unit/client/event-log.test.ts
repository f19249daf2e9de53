import 'fake-indexeddb/auto'
import { describe, expect, test } from 'vitest'
import { indexedEventDisk, memoryEventDisk, type EventDisk } from '@/app/_client/events/event-disk'
import { EventLog } from '@/app/_client/events/event-log'
import type { EventTransport } from '@/app/_client/events/event-transport'
import { Unreachable } from '@/app/_client/transport'
import type { SiteEvent } from '@/lib/plan'
import { event, uuid } from '../field-log/site-events'

/** A station that keeps events as the real one does, can be out of reach, and can lack the log. */
function station() {
  const kept: SiteEvent[] = []
  const state = { isAway: false, hasLog: true, bad: new Set<string>(), sendCount: 0 }
  const transport: EventTransport = {
    async send(_logId, events) {
      state.sendCount += 1
      if (state.isAway) throw new Unreachable('away')
      if (!state.hasLog) return { kind: 'refused', sentence: 'There is no such log here.', isMissing: true, isAboutEvents: false }
      if (events.some(({ id }) => state.bad.has(id))) return { kind: 'refused', sentence: 'Bad.', isMissing: false, isAboutEvents: true }
      for (const one of events) if (!kept.some(({ id }) => id === one.id)) kept.push(one)
      return { kind: 'taken' }
    },
    async since(_logId, after) {
      if (state.isAway) throw new Unreachable('away')
      if (!state.hasLog) return 'missing'
      return { events: kept.slice(after), last: Math.max(after, kept.length), total: kept.length, isDeleted: false }
    },
  }
  return { kept, state, transport }
}

const still = { after: () => () => undefined }
const logOn = (disk: EventDisk, transport: EventTransport, sendLog?: () => Promise<void>) => new EventLog('log', { disk, transport, timers: still, ...(sendLog && { sendLog }) })
const ids = (events: readonly SiteEvent[]) => events.map(({ id }) => Number(id.slice(-3)))

describe.each([['in memory', () => memoryEventDisk()], ['in IndexedDB', () => indexedEventDisk(`events-${Math.floor(performance.now() * 1000)}`)]] as const)('events %s', (_where, makeDisk) => {
  test('are on the disk before adding comes back, and at the station once', async () => {
    const [disk, { kept, transport }] = [makeDisk(), station()]
    const log = logOn(disk, transport)
    await log.load()
    expect(await log.add([event(1, 0)])).toBe(true)
    expect((await disk.eventsOf('log')).map((row) => row.event)).toEqual([event(1, 0)])
    await log.sync()
    await log.sync()
    expect(ids(kept)).toEqual([1])
    expect(log.view()).toMatchObject({ isAway: false, refused: undefined })
    expect(log.view().unsent.size).toBe(0)
    expect(await disk.unsentLogIds()).toEqual([])
  })

  test('made while the station is away are sent by the next window', async () => {
    const [disk, { kept, state, transport }] = [makeDisk(), station()]
    state.isAway = true
    const first = logOn(disk, transport)
    for (let number = 1; number <= 50; number++) await first.add([event(number, number)])
    expect(first.view().unsent.size).toBe(50)
    expect(await disk.unsentCountOf('log')).toBe(50)
    state.isAway = false
    const next = logOn(disk, transport)
    await next.load()
    expect(next.view().events).toHaveLength(50)
    await next.sync()
    expect(ids(kept)).toEqual(Array.from({ length: 50 }, (_, at) => at + 1))
    expect(await disk.unsentLogIds()).toEqual([])
  })

  test('of others come, and are not sent again', async () => {
    const [disk, { kept, state, transport }] = [makeDisk(), station()]
    kept.push(event(7, 70), event(8, 80))
    const log = logOn(disk, transport)
    await log.add([event(1, 0)])
    await log.sync()
    expect(ids(log.view().events)).toEqual([1, 7, 8])
    const sent = state.sendCount
    await log.sync()
    expect(state.sendCount).toBe(sent)
    const again = logOn(disk, transport)
    await again.load()
    expect(ids(again.view().events)).toEqual([1, 7, 8])
  })

  test('are sent again to a station that was put back to an older backup', async () => {
    const [disk, { kept, transport }] = [makeDisk(), station()]
    const log = logOn(disk, transport)
    await log.add([event(1, 0), event(2, 10)])
    await log.sync()
    kept.length = 0
    await log.sync()
    await log.sync()
    expect(ids(kept)).toEqual([1, 2])
  })
})

test('a log that the station does not have yet is sent first', async () => {
  const { kept, state, transport } = station()
  state.hasLog = false
  const log = logOn(memoryEventDisk(), transport, async () => { state.hasLog = true })
  await log.add([event(1, 0)])
  await log.sync()
  expect(ids(kept)).toEqual([1])
})

test('one event that the station will not have holds none of the others back, and is said', async () => {
  const { kept, state, transport } = station()
  state.bad.add(uuid(2))
  const log = logOn(memoryEventDisk(), transport)
  state.isAway = true
  await log.add([event(1, 0), event(2, 1), event(3, 2)])
  state.isAway = false
  await log.sync()
  expect(ids(kept)).toEqual([1, 3])
  expect([...log.view().unsent]).toEqual([uuid(2)])
  expect(log.view().refused).toBe('Bad.')
})

test('a disk that takes nothing is said at once, and the event is shown and sent all the same', async () => {
  const { kept, transport } = station()
  const full: EventDisk = { ...memoryEventDisk(), keep: async (_events, isSent) => { if (!isSent) throw new Error('full') } }
  const log = logOn(full, transport)
  expect(await log.add([event(1, 0)])).toBe(false)
  expect([...log.view().unkept]).toEqual([uuid(1)])
  await log.sync()
  expect(ids(kept)).toEqual([1])
  expect(log.view().unkept.size).toBe(0)
})
