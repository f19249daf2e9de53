import { describe, expect, test } from 'vitest'
import { Given, isWithin, readCases } from './reference-case'

/** Works every case of a file by the law it names, as a test each. A case that says why ours differs must differ. */
export function testCases(file: string, laws: Readonly<Record<string, (given: Given) => number>>): void {
  const { title, cases } = readCases(file)
  describe(title, () => {
    for (const one of cases) {
      const verb = one.miss ? 'differs on purpose from' : 'agrees with'
      test(`${one.law} ${verb} ${one.source} (${one.mark}): ${one.name}`, () => {
        const law = laws[one.law]
        if (!law) throw new Error(`no law named ${one.law}`)
        const ours = law(new Given(one))
        expect(isWithin(one, ours), `ours ${ours}, theirs ${one.expected} ${one.unit}, ${one.why}`).toBe(one.miss === undefined)
      })
    }
  })
}
