import { expect, test } from 'vitest'
import { EVENT, eventKinds } from '@/lib/shuttle'

test('the number of an event is its place in the list of kinds', () => {
  expect(eventKinds.map((kind) => EVENT[kind])).toEqual(eventKinds.map((_, i) => i))
  expect(Object.keys(EVENT)).toEqual([...eventKinds])
})
