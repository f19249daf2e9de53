import { expect, test } from 'vitest'
import { formatMeasured } from '@/app/_review/measure-words'

test.each([[563, 's', '9 min 23 s'], [29.4, 's', '29 s'], [418.3, 'gpm', '418 gpm']] as const)('%d %s that a log measured reads %s', (value, unit, words) => {
  expect(formatMeasured(value, unit, 'us').replaceAll('\u00a0', ' ')).toBe(words)
})
