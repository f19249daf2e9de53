import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { jsonSchemas } from '@/app/_cli/json-schemas'

it.each(Object.entries(jsonSchemas()))('the published %s is the one the code checks by', (name, text) => {
  expect(readFileSync(new URL(`../../../public/schemas/${name}`, import.meta.url), 'utf8')).toBe(text)
})
