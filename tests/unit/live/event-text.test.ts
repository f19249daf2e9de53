import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { EventReader, eventText, type StreamEvent } from '@/app/_live/event-text'

const read = (text: string) => new EventReader().read(text)

describe('a stream of events', () => {
  // HTML standard, "Interpreting an event stream", its examples; from memory.
  it('is read as the standard’s examples are', () => {
    expect(read('data: YHOO\ndata: +2\ndata: 10\n\n')).toEqual([{ event: 'message', data: 'YHOO\n+2\n10' }])
    expect(read(': test stream\n\ndata: first event\nid: 1\n\ndata:second event\nid\n\ndata:  third event\n\n')).toEqual([
      { event: 'message', data: 'first event', id: '1' }, { event: 'message', data: 'second event', id: '' }, { event: 'message', data: ' third event' },
    ])
    expect(read('data\n\ndata\ndata\n\ndata:')).toEqual([{ event: 'message', data: '' }, { event: 'message', data: '\n' }])
    expect(read('data:test\n\ndata: test\n\n')).toEqual([{ event: 'message', data: 'test' }, { event: 'message', data: 'test' }])
  })

  it('ends its lines in any of three ways, begins with a mark or not, and passes over fields it does not know', () => {
    expect(read('\uFEFFevent: now\r\ndata: 1\r\n\r\nevent: now\rdata: 2\r\rretry: 5\nfoo: bar\ndata: 3\n\n')).toEqual([{ event: 'now', data: '1' }, { event: 'now', data: '2' }, { event: 'message', data: '3' }])
    const reader = new EventReader()
    reader.read('id: 7\n\n')
    expect(reader.lastId).toBe('7')
  })

  it('comes out as it went in, wherever it is cut', () => {
    const line = fc.string({ unit: 'binary' }).map((text) => text.replace(/[\r\n\0]/g, ' '))
    const events = fc.array(fc.record({ id: fc.option(line, { nil: undefined }), event: line.filter((text) => text.trim() === text && text !== ''), data: fc.string({ unit: 'binary' }).map((text) => text.replace(/\r\n?/g, '\n')) }), { maxLength: 5 })
    fc.assert(fc.property(events, fc.array(fc.nat(400)), (sent, cuts) => {
      const text = sent.map((one) => eventText(one as StreamEvent)).join('')
      const at = [...new Set([0, ...cuts.filter((cut) => cut < text.length), text.length])].sort((a, b) => a - b)
      const reader = new EventReader()
      const came = at.slice(1).flatMap((end, i) => reader.read(text.slice(at[i], end)))
      expect(came).toEqual(sent.map(({ id, ...rest }) => ({ ...(id !== undefined && { id }), ...rest })))
    }))
  })

  it('cannot be given a field through another', () => {
    expect(() => eventText({ id: '1\ndata: x', event: 'now', data: '' })).toThrow(RangeError)
    expect(() => eventText({ event: 'now\n\ndata: x', data: '' })).toThrow(RangeError)
  })
})
