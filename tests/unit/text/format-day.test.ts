import { afterEach, beforeEach, expect, test } from 'vitest'
import { formatDay, formatMoment, formatToday, localDay } from '@/app/_text'

const zone = process.env.TZ
beforeEach(() => { process.env.TZ = 'America/Denver' })
afterEach(() => {
  if (zone === undefined) delete process.env.TZ
  else process.env.TZ = zone
})

test('a calendar day is shown as it is, wherever the device stands', () => {
  expect(formatDay('2025-03-04')).toBe('Mar 4, 2025')
})

test('a moment is shown by the day it was there: in the evening the day of Greenwich is the next one', () => {
  expect(formatDay('2025-03-05T03:30:00.000Z')).toBe('Mar 4, 2025')
  expect(formatDay('2025-03-05T17:30:00.000Z')).toBe('Mar 5, 2025')
})

test('today is the day of the device', () => {
  expect(localDay(new Date('2025-03-05T03:30:00.000Z'))).toBe('2025-03-04')
  expect(formatToday()).toBe(formatDay(localDay()))
})

test('what is no day stays as it was written', () => {
  expect(formatDay('some time in March')).toBe('some time in March')
})

test('a moment has a time of day, to the second where that is asked', () => {
  const at_ms = Date.parse('2025-03-05T03:30:15.000Z')
  expect(formatMoment(at_ms)).toMatch(/^\d{1,2}:30\s[AP]M$/)
  expect(formatMoment(at_ms, { hasSeconds: true })).toMatch(/^\d{1,2}:30:15\s[AP]M$/)
})
