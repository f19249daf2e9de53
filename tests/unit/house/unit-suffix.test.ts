import { RuleTester, type Linter } from 'eslint'
import nextTypescript from 'eslint-config-next/typescript'
import { describe, expect, test } from 'vitest'
import { findBareQuantity, unitSuffix } from '@/scripts/lint/unit-suffix.mjs'

RuleTester.describe = describe
RuleTester.it = test

const parser = (nextTypescript as Linter.Config[]).map(({ languageOptions }) => languageOptions?.parser).find((found) => found !== undefined)

test.each(['flow', 'maxLift', 'fill_rate', 'tankHeight', 'hose_length'])('%s speaks of a quantity and says no unit', (name) => {
  expect(findBareQuantity(name)).toBeDefined()
})

test.each([
  'flow_gpm', 'lift_ft', 'tankHeight_in', 'gain_ftPerS', 'rise_absolute_ft', 'loss_psi', 'fillRatio', 'flowFactor', 'levelCount', 'rateShare', 'flows',
  'length', 'timeline', 'levelIndex', 'name',
])('%s needs no unit, or says it', (name) => {
  expect(findBareQuantity(name)).toBeUndefined()
})

new RuleTester({ languageOptions: { parser } }).run('unit-suffix', unitSuffix, {
  valid: [
    'type Site = { lift_ft: number; bayCount: number }',
    'type Site = { flow: string; level: Level }',
    'function f(lift_ft: number, flow: Flow) {}',
    'const s = z.strictObject({ lift_ft: quantity(0, 40).optional(), travel: legSchema })',
    'const flow = 3',
  ],
  invalid: [
    { code: 'type Site = { lift: number }', errors: [{ messageId: 'bare' }] },
    { code: 'type Site = { readonly rates?: number; fillRate: number | undefined }', errors: [{ messageId: 'bare' }] },
    { code: 'interface Run { level: readonly number[] }', errors: [{ messageId: 'bare' }] },
    { code: 'function f(lift: number, head = 3) {}', errors: [{ messageId: 'bare' }, { messageId: 'bare' }] },
    { code: 'const f = (flow: number) => flow', errors: [{ messageId: 'bare' }] },
    { code: 'type F = (pressure: number) => number', errors: [{ messageId: 'bare' }] },
    { code: 'const s = z.strictObject({ lift: quantity(0, 40).optional(), depth: z.number().min(0) })', errors: [{ messageId: 'bare' }, { messageId: 'bare' }] },
  ],
})
