import { describe, expect, test } from 'vitest'
import { markOfDraft, outcomeOf, shownEntry } from '@/app/_ui/quantity-draft'
import type { DraftRules, StoredQuantity } from '@/app/_ui/quantity-draft'

const rules: DraftRules = { field: 'Lift', unit: 'ft', system: 'us', max: 200 }
const typed: StoredQuantity = { value: 2.5 / 0.3048, evidence: { mark: 'measured', by: 'R. Hale', on: '2025-04-12', entered: '2.5 m' } }

describe('an entry at rest', () => {
  test('shows what was typed, in the unit it was typed', () => {
    expect(shownEntry(typed, 'ft', 'us')).toEqual({ text: '2.5 m', hasOwnUnit: true })
    expect(shownEntry({ value: 12, evidence: { mark: 'assumed', entered: '12' } }, 'ft', 'us')).toEqual({ text: '12', hasOwnUnit: false })
  })

  test('shows the value once what was typed would mean another one in the units in use', () => {
    expect(shownEntry({ value: 12, evidence: { mark: 'assumed', entered: '12' } }, 'ft', 'metric')).toEqual({ text: '3.658', hasOwnUnit: false })
  })

  test('shows the value where somebody changed it without typing', () => {
    expect(shownEntry({ value: 14, evidence: { mark: 'computed', entered: '12' } }, 'ft', 'us').text).toBe('14')
  })

  test('is empty while nobody has said', () => {
    expect(shownEntry({}, 'ft', 'us')).toEqual({ text: '', hasOwnUnit: false })
  })
})

describe('leaving an entry', () => {
  test('with its text untouched changes nothing', () => {
    expect(outcomeOf('2.5 m', typed, rules)).toEqual({ kind: 'same' })
    expect(outcomeOf('', {}, rules)).toEqual({ kind: 'same' })
  })

  test('with a new figure stores it as typed and as assumed, whatever the old one was, until somebody says how it is known', () => {
    expect(outcomeOf(`8'6"`, typed, rules)).toEqual({ kind: 'changed', stored: { value: 8.5, evidence: { mark: 'assumed', entered: `8'6"` } } })
    expect(markOfDraft('9', typed, rules)).toBeUndefined()
  })

  test('with a new figure goes on as was last said in the same item', () => {
    const said = { usual: 'measured' } as const
    expect(outcomeOf('9', {}, { ...rules, said })).toEqual({ kind: 'changed', stored: { value: 9, evidence: { mark: 'measured', entered: '9' } } })
    expect(markOfDraft('9', {}, { ...rules, said })).toBe('measured')
    expect(markOfDraft('9', {}, { ...rules, said: { ...said, chosen: 'assumed' } })).toBe('assumed')
    // What only repeats the number offered is known as that number is, whatever was said of another figure.
    expect(markOfDraft('10', {}, { ...rules, said, standIn: { value: 10, mark: 'handbook' } })).toBe('handbook')
  })

  test('with a new figure marks it the way that was said while typing', () => {
    for (const chosen of ['measured', 'handbook', 'assumed'] as const) {
      expect(outcomeOf('9', typed, { ...rules, said: { chosen } })).toEqual({ kind: 'changed', stored: { value: 9, evidence: { mark: chosen, entered: '9' } } })
      expect(markOfDraft('9', typed, { ...rules, said: { chosen } })).toBe(chosen)
    }
  })

  test('with the number that was offered in the empty field takes over how that one is known', () => {
    const standIn = { value: 10, mark: 'handbook', source: 'lift for pump rating' } as const
    expect(outcomeOf('10', {}, { ...rules, standIn })).toEqual({ kind: 'changed', stored: { value: 10, evidence: { mark: 'handbook', source: 'lift for pump rating', entered: '10' } } })
    expect(markOfDraft('10', {}, { ...rules, standIn })).toBe('handbook')
    expect(markOfDraft('11', {}, { ...rules, standIn })).toBeUndefined()
    expect(outcomeOf('12.4', {}, { ...rules, standIn: { value: 12.4, mark: 'computed' } })).toMatchObject({ stored: { evidence: { mark: 'assumed' } } })
  })

  test('with the same figure written otherwise keeps how it is known', () => {
    expect(outcomeOf('250 cm', typed, rules)).toEqual({ kind: 'changed', stored: { value: expect.closeTo(2.5 / 0.3048, 9), evidence: { ...typed.evidence, entered: '250 cm' } } })
  })

  test('empty makes the figure absent, its evidence with it', () => {
    expect(outcomeOf(' ', typed, rules)).toEqual({ kind: 'changed', stored: {} })
  })

  test('empty is refused where a figure is needed', () => {
    expect(outcomeOf('', typed, { ...rules, isRequired: true })).toEqual({ kind: 'refused', sentence: 'Lift is needed.' })
  })

  test('with nonsense is refused by name', () => {
    const outcome = outcomeOf('deep', typed, rules)
    expect(outcome.kind === 'refused' && outcome.sentence).toContain('Lift: “deep”')
  })
})
