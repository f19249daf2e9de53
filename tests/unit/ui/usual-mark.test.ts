import { expect, test } from 'vitest'
import { saidMark, typedEvidence } from '@/app/_ui/typed-evidence'
import { nextMark } from '@/app/_ui/usual-mark'

test('up and down go through the ways of knowing, from the first or the last while none was said', () => {
  expect(nextMark(undefined, 1)).toBe('measured')
  expect(nextMark(undefined, -1)).toBe('assumed')
  expect((['measured', 'handbook', 'assumed'] as const).map((mark) => nextMark(mark, 1))).toEqual(['handbook', 'assumed', 'measured'])
  expect((['measured', 'handbook', 'assumed'] as const).map((mark) => nextMark(mark, -1))).toEqual(['assumed', 'measured', 'handbook'])
  // What a program worked out is none that a person says.
  expect(nextMark('computed', 1)).toBe('measured')
})

test('a source goes with the number that was offered, and not with one that was said to be known otherwise', () => {
  const standIn = { value: 90, mark: 'handbook', source: 'form' } as const
  expect(typedEvidence(90, standIn)).toEqual({ mark: 'handbook', source: 'form' })
  expect(typedEvidence(90, standIn, { chosen: 'measured' })).toEqual({ mark: 'measured' })
  expect(typedEvidence(91, standIn)).toEqual({ mark: 'assumed' })
  expect(saidMark(91, standIn, {})).toBeUndefined()
})
