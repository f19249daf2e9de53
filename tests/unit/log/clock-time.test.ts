import { expect, test } from 'vitest'
import { clockTime, dayAt, momentAt, typedMoment } from '@/app/_log/clock-time'

const at = (hour: number, minute = 0) => (hour * 60 + minute) * 60

test('a clock time is that of the place, whatever zone the device is in', () => {
  const at_ms = Date.UTC(2026, 6, 4, 2, 5, 9)
  expect(clockTime(at_ms, 'America/Denver')).toBe('20:05:09')
  expect(dayAt(at_ms, 'America/Denver')).toBe('2026-07-03')
  expect(clockTime(at_ms, 'UTC', { hasSeconds: false })).toBe('02:05')
  expect(clockTime(Date.UTC(2026, 0, 1), 'UTC')).toBe('00:00:00')
})

// The IANA zone data of the platform is the reference: New York goes to summer time on 2026-03-08 at 2 a.m., back on 2026-11-01.
test.each([
  ['2026-03-07', 14, Date.UTC(2026, 2, 7, 19)], ['2026-03-08', 1, Date.UTC(2026, 2, 8, 6)], ['2026-03-08', 3, Date.UTC(2026, 2, 8, 7)],
  ['2026-11-01', 0, Date.UTC(2026, 10, 1, 4)], ['2026-11-01', 3, Date.UTC(2026, 10, 1, 8)],
])('%s at %i o’clock in New York', (day, hour, expected) => {
  expect(momentAt(at(hour), day, 'America/New_York')).toBe(expected)
  expect(Number(clockTime(expected, 'America/New_York').slice(0, 2))).toBe(hour)
})

test('long before what was written above it, a time is one of the next day', () => {
  const before_ms = Date.UTC(2026, 2, 7, 23, 50)
  expect(momentAt(at(0, 5), '2026-03-07', 'UTC', before_ms)).toBe(Date.UTC(2026, 2, 8, 0, 5))
  expect(momentAt(at(23, 40), '2026-03-07', 'UTC', before_ms)).toBe(Date.UTC(2026, 2, 7, 23, 40))
})

test('a corrected time is the one nearest to what stood there, over midnight too', () => {
  const noon_ms = Date.UTC(2026, 2, 8, 12)
  expect(typedMoment('23:58', Date.UTC(2026, 2, 8, 0, 1), 'UTC', noon_ms)).toBe(Date.UTC(2026, 2, 7, 23, 58))
  expect(typedMoment('0:02', Date.UTC(2026, 2, 7, 23, 59), 'UTC', noon_ms)).toBe(Date.UTC(2026, 2, 8, 0, 2))
  expect(typedMoment('noon', 0, 'UTC', noon_ms)).toBeUndefined()
})

test('a corrected time is not one that is still to come', () => {
  const evening_ms = Date.UTC(2026, 2, 7, 18, 16)
  expect(typedMoment('0:05', evening_ms, 'UTC', evening_ms + 60_000)).toBe(Date.UTC(2026, 2, 7, 0, 5))
  // The clock of the device that corrects may be a little behind.
  expect(typedMoment('18:20', evening_ms, 'UTC', evening_ms)).toBe(Date.UTC(2026, 2, 7, 18, 20))
})
