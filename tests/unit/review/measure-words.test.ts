import { expect, test } from 'vitest'
import { formatMeasured, measureWords } from '@/app/_review/measure-words'

test.each([[563, 's', '9 min 23 s'], [29.4, 's', '29 s'], [418.3, 'gpm', '418 gpm']] as const)('%d %s that a log measured reads %s', (value, unit, words) => {
  expect(formatMeasured(value, unit, 'us').replaceAll('\u00a0', ' ')).toBe(words)
})

test('times that read alike are no range', () => {
  const rangeOf = (low: number, high: number) => measureWords({ doc: 'district', collection: 'apparatus', itemId: 't', field: 'dumpClear_s', value: 28, count: 3, low, high, spreadShare: 0.1 }, () => 'Tender 22', 'us').range.replaceAll('\u00a0', ' ')
  expect(rangeOf(27.9, 28.2)).toBe('3 times, each 28 s')
  expect(rangeOf(26, 30)).toBe('average of 3, from 26 s to 30 s')
})
