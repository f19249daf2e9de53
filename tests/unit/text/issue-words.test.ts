import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { isTextKey } from '@/app/_text'

const lib = new URL('../../../lib/', import.meta.url).pathname
const codes = new Set(
  readdirSync(lib, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .flatMap((name) => [...readFileSync(join(lib, name), 'utf8').matchAll(/\b(?:issue|osmFault|say)\(\s*'([a-zA-Z0-9-]+)'/g)].map(([, code]) => code ?? '')),
)

it('every issue the core can raise has words', () => {
  expect(codes.size).toBeGreaterThan(60)
  expect([...codes].filter((code) => !isTextKey(`issue.${code}`))).toEqual([])
})
