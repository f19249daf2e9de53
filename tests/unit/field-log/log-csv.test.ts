import { describe, expect, test } from 'vitest'
import { daysFromDay } from '@/lib/calendar'
import { findMoment, findTimeOfDay_s, isoFromMoment, logCsv, logFileText, readLogCsv, readLogFile, type CsvContext } from '@/lib/field-log'
import { sayIssue } from '@/app/_text'
import type { FieldLog, SiteEvent } from '@/lib/plan'
import { DAY_MS, event, uuid } from './site-events'

const world = {
  units: [{ id: 'T1', name: 'Tender 1', isTender: true }, { id: 'T2', name: 'Twin', isTender: true }, { id: 'T3', name: 'Twin', isTender: true }],
  sites: [{ id: 'D', name: 'Barn, north', kind: 'dump' as const }, { id: 'F', name: 'Mill pond', kind: 'fill' as const }],
}
const midnight_ms = Date.UTC(2026, 2, 7)
const context = (known: readonly SiteEvent[] = []): CsvContext => ({
  logId: 'log', world, known,
  momentOf: (time_s, after_ms) => {
    const at_ms = midnight_ms + time_s * 1000
    return after_ms !== undefined && at_ms < after_ms - 6 * 3_600_000 ? at_ms + 86_400_000 : at_ms
  },
})
const sentences = (text: string) => readLogCsv(text, context()).issues.map((one) => sayIssue(one, () => undefined, 'us'))

const events: SiteEvent[] = [
  event(1, 0, { note: 'Says “hello”, twice;\nand a new line', by: 'A. Pump' }),
  event(2, 0.25, { kind: 'flow', value: 512.5, apparatusId: undefined, post: { kind: 'attack' } }),
  event(3, 60, { replaces: uuid(1), made_ms: DAY_MS + 90_000, apparatusId: 'T2' }),
  event(4, 70, { retracts: uuid(2), kind: 'flow', apparatusId: undefined, post: { kind: 'attack' } }),
  event(5, 80, { kind: 'note', note: '=1+1', apparatusId: undefined }),
]

describe('a table of events', () => {
  test('is read back to the same events, corrections and undos too', () => {
    expect(readLogCsv(logCsv(events, world), context())).toEqual({ events, fresh: events, rowCount: 5, issues: [] })
    expect(readLogCsv(logCsv(events, world), context(events)).fresh).toEqual([])
  })

  // RFC 4180, rules 2, 5, 6 and 7: CRLF, fields with commas, quotes or line breaks in quotes, quotes doubled.
  test('is in the common form, with names where they are plain and no formula for a spreadsheet', () => {
    const text = logCsv(events, world)
    const lines = text.split('\r\n')
    expect(lines[0]).toBe('time,post,site,event,apparatus,value,unit,note,by,device,entered,made,id,replaces,retracts')
    expect(lines[1]).toContain('"Barn, north"')
    expect(text.endsWith('\r\n')).toBe(true)
    expect(text).toContain('"Says “hello”, twice;\nand a new line"')
    expect(text).toContain(`,"'=1+1",`)
    expect(lines[3]).toContain(',T2,')
  })

  test('made by hand needs time, post and event; a time of day is taken on the day of the log and after midnight on the next', () => {
    const { events: read, issues } = readLogCsv('time;post;event;apparatus;site\n23:50;dump;arrived;tender 1;barn, north\n0:05;Dump;Left;Tender 1;D\n', context())
    expect(issues).toEqual([])
    expect(read.map(({ at_ms, kind, apparatusId, post, entered }) => [isoFromMoment(at_ms), kind, apparatusId, post.siteId, entered])).toEqual([
      ['2026-03-07T23:50:00Z', 'arrived', 'T1', 'D', 'import'], ['2026-03-08T00:05:00Z', 'left', 'T1', 'D', 'import'],
    ])
  })

  test('read twice brings the same events', () => {
    const text = 'time,post,event\n14:05,fill,arrived\n14:06,fill,hooked up\n'
    expect(readLogCsv(text, context()).events).toEqual(readLogCsv(text, context()).events)
    expect(readLogCsv(text, context(readLogCsv(text, context()).events)).fresh).toEqual([])
  })

  test('with bad rows brings nothing, and names row and column of each in a sentence', () => {
    const text = 'time,post,event,apparatus,value,unit,note\nsoon,fill,arrived,,,,\n14:05,roof,arrived,,,,\n14:06,dump,exploded,,,,\n14:07,dump,arrived,Twin,,,\n14:08,attack,flow,,much,,\n14:09,attack,flow,,500,psi,\n14:10,attack,flow,,,,\n14:11,attack,note,,,,\n14:12,dump,arrived,,5,,\n'
    const read = readLogCsv(text, context())
    expect(read.events).toEqual([])
    expect(sentences(text)).toEqual([
      'Row 2, column time: “soon” is no time. Write 14:05, 14:05:30, or a date with its time and zone.',
      'Row 3, column post: “roof” is none of fill, dump, attack, draft.',
      expect.stringContaining('Row 4, column event: “exploded” is none of arrived,'),
      'Row 5, column apparatus: Twin is not known here, or several have that name.',
      'Row 6, column value: “much” is not a number.',
      'Row 7, column unit: this event is given in gpm, not in psi.',
      'Row 8, column value: this event needs a value from 0 to 20,000 gpm.',
      'Row 9, column note: a note needs a text of at most 2,000 letters.',
      'Row 10, column value: this event has no value; leave the field empty.',
    ])
  })

  test('with other columns, without those it needs, or empty says so', () => {
    expect(sentences('time,post,event,colour\n14:05,fill,arrived,red\n')[0]).toContain('a column named colour')
    expect(sentences('time,event\n14:05,arrived\n')).toEqual(['The table has no column named post.'])
    expect(sentences('time,post,event\n')).toEqual(['The table has no rows under its line of names.'])
    expect(sentences('')).toEqual(['The table has no rows under its line of names.'])
  })
})

test('a log file is read back whole; another file, or one whose events are of another log, is not', () => {
  const log: FieldLog = { format: 'millrace-log', version: 1, id: 'log', name: 'Drill', districtId: 'D1', date: '2026-03-07', places: [], units: [] }
  expect(readLogFile(logFileText(log, events))).toEqual({ log, events })
  expect(readLogFile('time,post')).toMatchObject({ code: 'log-file-not-json' })
  expect(readLogFile('{"format":"millrace-plan"}')).toMatchObject({ code: 'log-file-other' })
  expect(readLogFile(logFileText({ ...log, id: 'other' }, events))).toMatchObject({ code: 'log-file-other' })
  expect(readLogFile(logFileText(log, [{ ...events[0]!, at_ms: 5 }]))).toMatchObject({ severity: 'block' })
})

describe('moments as text', () => {
  // The platform's own Date is the reference.
  test('are those of the calendar, in leap years and before midnight too', () => {
    for (let at_ms = Date.UTC(1999, 11, 28, 23, 59, 59, 7); at_ms < Date.UTC(2101, 0, 1); at_ms += 86_400_000 * 13 + 3_723_456) {
      expect(findMoment(isoFromMoment(at_ms))).toBe(at_ms)
      expect(Date.parse(isoFromMoment(at_ms))).toBe(at_ms)
    }
    expect(daysFromDay(1970, 1, 1)).toBe(0)
  })

  test('are read with any offset, and not at all where there is no such day or hour', () => {
    for (const text of ['2026-03-07T14:05:09+02:00', '2026-03-07T14:05:09.250-05:30', '2024-02-29T00:00:00Z']) expect(findMoment(text)).toBe(Date.parse(text))
    for (const text of ['2026-02-29T00:00:00Z', '2026-03-07T24:00:00Z', '2026-03-07T14:60:00Z', '2026-03-07 14:05', 'noon']) expect(findMoment(text)).toBeUndefined()
    expect(['14:05', '1405', '9:07:30', '14.05', '25:00', '12', 'x'].map(findTimeOfDay_s)).toEqual([50_700, 50_700, 32_850, 50_700, undefined, undefined, undefined])
  })
})
