import { describe, expect, test } from 'vitest'
import { lawFiles, laws } from './hydraulics-laws'
import { Given, isWithin, readCases } from './reference-case'

for (const file of lawFiles) {
  const { title, cases } = readCases(file)
  describe(title, () => {
    for (const one of cases) {
      const verb = one.miss ? 'differs on purpose from' : 'agrees with'
      test(`${one.law} ${verb} ${one.source} (${one.mark}): ${one.name}`, () => {
        const law = laws[one.law]
        if (!law) throw new Error(`no law named ${one.law}`)
        const ours = law(new Given(one))
        const told = `ours ${ours}, theirs ${one.expected} ${one.unit}, ${one.why}`
        expect(isWithin(one, ours), told).toBe(one.miss === undefined)
      })
    }
  })
}

test('every law that cases may name is named by one', () => {
  const named = new Set(lawFiles.flatMap((file) => readCases(file).cases.map(({ law }) => law)))
  expect(Object.keys(laws).filter((law) => !named.has(law))).toEqual([])
})
