import { describe, expect, it } from 'vitest'
import { ActOutbox, type ActAnswer } from '@/app/_seat/act-outbox'
import { idOfNumber, numberOfId, type SeatAct } from '@/app/_seat/seat-messages'
import { afterEvent, emptySeat, type SeatState } from '@/app/_seat/seat-state'
import type { SeatNews } from '@/lib/exercise'

const news = (number: number, data: SeatNews) => ({ event: 'news', id: idOfNumber(number), data: JSON.stringify(data) })
const note = (id: string): SeatNews => ({ kind: 'note', id, at_s: 1, text: id })
const begin = (after: number) => ({ event: 'begin', data: JSON.stringify({ after }) })
const after = (state: SeatState, ...events: Parameters<typeof afterEvent>[1][]) => events.reduce<SeatState | undefined>((one, event) => one && afterEvent(one, event), state)
const clock = { at_s: 60, isRunning: true, speedFactor: 10, setAt: '2026-01-01T00:00:00Z' }

describe('what a seat has heard', () => {
  it('is each news once, in order; a doubled one changes nothing, a missing one is asked for', () => {
    const two = after(emptySeat, begin(0), news(1, note('a')), news(2, note('b')))!
    expect([two.number, two.notes.map(({ id }) => id)]).toEqual([2, ['a', 'b']])
    expect(after(two, news(2, note('b')), news(1, note('a')))).toEqual(two)
    expect(after(two, news(4, note('d')))).toBeUndefined()
    expect(after(two, begin(2), news(3, { kind: 'noteGone', id: 'a' }))).toMatchObject({ number: 3, notes: [{ id: 'b' }] })
  })

  it('begins anew where the station does', () => {
    const one = after(emptySeat, begin(0), news(1, note('a')))!
    expect(after(one, begin(0), news(1, note('z')))!.notes).toEqual([{ kind: 'note', id: 'z', at_s: 1, text: 'z' }])
    expect(after(one, begin(7))).toBeUndefined()
  })

  it('is the clock and the end, which can be taken back', () => {
    const ended = after(emptySeat, news(1, { kind: 'clock', clock }), news(2, { kind: 'ended', at_s: 90 }))!
    expect(ended).toMatchObject({ clock, endedAt_s: 90 })
    const on = after(ended, news(3, { kind: 'ended' }))!
    expect([on.clock, 'endedAt_s' in on]).toEqual([clock, false])
    expect('clock' in after(on, news(4, { kind: 'clock' }))!).toBe(false)
  })
})

it('a number is read only in the numbering it was written in', () => {
  expect(numberOfId(idOfNumber(12))).toBe(12)
  for (const other of [null, undefined, '', '12', '2.12', '1.-1', '1.12.3', '1.12x']) expect(numberOfId(other), String(other)).toBe(0)
})

describe('what is on its way from a seat', () => {
  const act = (id: string): SeatAct => ({ kind: 'note', id, text: id })
  function storage(): Storage {
    const kept = new Map<string, string>()
    return { get length() { return kept.size }, key: (i) => [...kept.keys()][i] ?? null, getItem: (key) => kept.get(key) ?? null, setItem: (key, text) => void kept.set(key, text), removeItem: (key) => void kept.delete(key), clear: () => { kept.clear() } }
  }
  const settle = () => new Promise((resolve) => setTimeout(resolve, 10))

  it('stays on the device until the station has it, over a reload, and is sent in order', async () => {
    const store = storage()
    let isThere = false
    const sent: string[] = []
    const send = async ({ id }: SeatAct): Promise<ActAnswer> => {
      if (!isThere) throw new TypeError('network')
      sent.push(id)
      return { kind: 'taken' }
    }
    let time = 0
    const before = new ActOutbox('seat', store, send, () => (time += 1), [1])
    before.add(act('a'))
    before.add(act('b'))
    await settle()
    before.stop()
    expect(before.state()).toMatchObject({ isKept: true, waiting: [{ act: { id: 'a' } }, { act: { id: 'b' } }] })
    const reloaded = new ActOutbox('seat', store, send, () => (time += 1), [1])
    expect(reloaded.state().waiting.map(({ act: { id } }) => id)).toEqual(['a', 'b'])
    isThere = true
    await reloaded.flush()
    expect([sent, reloaded.state().waiting, store.length]).toEqual([['a', 'b'], [], 0])
    expect(new ActOutbox('seat', store, send).state().waiting).toEqual([])
  })

  it('is tried again by itself', async () => {
    let tries = 0
    const outbox = new ActOutbox('seat', storage(), async () => ({ kind: (tries += 1) < 3 ? 'later' : 'taken' }), Date.now, [1])
    outbox.add(act('a'))
    for (let i = 0; i < 50 && outbox.state().waiting.length > 0; i++) await settle()
    expect([tries, outbox.state().waiting.length]).toEqual([3, 0])
  })

  it('says in words what was refused, and goes on with the rest', async () => {
    const outbox = new ActOutbox('seat', storage(), async ({ id }) => (id === 'a' ? { kind: 'refused', sentence: 'Not yours.' } : { kind: 'taken' }))
    outbox.add(act('a'))
    outbox.add(act('b'))
    await settle()
    expect(outbox.state()).toMatchObject({ waiting: [], refused: [{ act: { id: 'a' }, sentence: 'Not yours.' }] })
    outbox.dismiss('a')
    expect(outbox.state().refused).toEqual([])
  })

  it('says when the device would not write it down, and sends it all the same', async () => {
    const full = { ...storage(), length: 0, setItem: () => { throw new DOMException('full', 'QuotaExceededError') } }
    let isThere = false
    for (const store of [full, undefined]) {
      isThere = false
      const outbox = new ActOutbox('seat', store, async () => ({ kind: isThere ? 'taken' : 'later' }), Date.now, [1])
      outbox.add(act('a'))
      expect(outbox.state().isKept).toBe(false)
      isThere = true
      for (let i = 0; i < 50 && outbox.state().waiting.length > 0; i++) await settle()
      expect(outbox.state().waiting).toEqual([])
    }
  })

  it('of another seat on this device is left alone', () => {
    const store = storage()
    new ActOutbox('seat-1', store, async () => ({ kind: 'later' })).add(act('a'))
    expect(new ActOutbox('seat-2', store, async () => ({ kind: 'later' })).state().waiting).toEqual([])
  })
})
