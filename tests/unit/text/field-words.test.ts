import { describe, expect, test } from 'vitest'
import { readdirSync, readFileSync } from 'node:fs'
import { fieldLabel, fieldName, measureWords, rangeWords, say } from '@/app/_text'

/** Fields whose unmeasured value may lead the answer: whatever stands in `take(ledger, …)`. */
const folder = new URL('../../../lib/supply/', import.meta.url)
const asked = [...new Set(readdirSync(folder).filter((file) => file.endsWith('.ts')).flatMap((file) =>
  [...readFileSync(new URL(file, folder), 'utf8').matchAll(/take\w*\(ledger, [\w.]+, '(\w+)'/g)].map(([, field = '']) => field)))]

describe('the name of a field', () => {
  test('stands in "{field} of {name}": a thing, no preposition or verb first', () => {
    expect(asked.length).toBeGreaterThan(15)
    for (const field of [...asked, 'fillPosition_s', 'fillClear_s', 'dumpPosition_s', 'dumpClear_s']) {
      expect(fieldName(field), field).not.toMatch(/^(into|clear|unhook|by|most|what|later|goes|arrival to|drive) /)
      expect(fieldName(field), field).not.toMatch(/^[A-Z][a-z]/)
    }
  })

  test('begins a label in capitals and a sentence part without', () => {
    expect(fieldLabel('fillPosition_s')).toBe('Time to take the bay and hook up')
    const input = { itemIds: ['t72'], field: 'fillPosition_s', value: 60, mark: 'assumed', spreadShare: 0.3 } as const
    expect(say('plan.first-measure', { what: measureWords(input, () => 'Tender 72'), range: rangeWords(input, 'us'), share: '27%' }).replaceAll('\u00a0', ' '))
      .toBe('First to measure (27% of the doubt about the flow): Measure Tender 72: time to take the bay and hook up. Now 1 min ± 30%.')
  })
})
