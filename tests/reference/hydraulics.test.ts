import { expect, test } from 'vitest'
import { lawFiles, laws } from './hydraulics-laws'
import { readCases } from './reference-case'
import { testCases } from './test-cases'

for (const file of lawFiles) testCases(file, laws)

test('every law that cases may name is named by one', () => {
  const named = new Set(lawFiles.flatMap((file) => readCases(file).cases.map(({ law }) => law)))
  expect(Object.keys(laws).filter((law) => !named.has(law))).toEqual([])
})
