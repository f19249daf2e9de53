import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { isBundle, readBundle } from '@/lib/plan'
import { evaluatePlan } from '@/lib/supply'

it('the bundle printed in the README is whole and gets an answer', () => {
  const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8')
  const read = readBundle(JSON.parse(/```json\n([\s\S]*?)```/.exec(readme)?.[1] ?? ''))
  if (!isBundle(read)) throw new Error(JSON.stringify(read))
  expect(evaluatePlan(read).sustainable_gpm).toBeGreaterThan(0)
})
