import { ESLint } from 'eslint'
import { describe, expect, test } from 'vitest'
import { root } from './source-imports'

const eslint = new ESLint({ cwd: root })

async function rulesBrokenBy(file: string, text: string): Promise<string[]> {
  const [result] = await eslint.lintText(text, { filePath: `${root}/${file}` })
  return (result?.messages ?? []).map(({ ruleId, message }) => ruleId ?? message)
}

const inLib = (text: string) => rulesBrokenBy('lib/probe.ts', text)

describe('lib is pure: lint refuses', () => {
  test.each([
    "import { readFileSync } from 'node:fs'", "import { readFileSync } from 'fs'", "import { connection } from 'next/server'", "import { useState } from 'react'",
    "import L from 'leaflet'", "import { PrismaClient } from '../generated/prisma/client'", "import { say } from '../app/_text'", "import { say } from '@/app/_text'",
    "import { units } from '@/lib/units'",
  ])('%s', async (text) => {
    expect(await inLib(`${text}\n`)).toContain('no-restricted-imports')
  })

  test.each(['Date.now()', "fetch('/x')", 'process.exit()', 'setTimeout(f, 1)', 'console.log(1)', 'crypto.randomUUID()', 'window.open()', 'document.title', 'globalThis.x'])('%s', async (text) => {
    expect(await inLib(`export const x = () => ${text}\n`)).toContain('no-restricted-globals')
  })

  test('Math.random', async () => {
    expect(await inLib('export const x = () => Math.random()\n')).toContain('no-restricted-properties')
  })

  test('a quantity without its unit', async () => {
    expect(await inLib('export type Site = { lift: number }\n')).toContain('millrace/unit-suffix')
  })

  test('a rule switched off in a line', async () => {
    const broken = await inLib('// eslint-disable-next-line no-restricted-properties\nexport const x = () => Math.random()\n')
    expect(broken).toContain('no-restricted-properties')
  })
})

test('lint lets lib import its own files and plain libraries', async () => {
  const text = "import { z } from 'zod'\nimport { units } from './units'\nimport { event } from './priming/events'\nexport const x = [z, units, event]\n"
  expect(await inLib(text)).toEqual([])
})

test('only the map imports Leaflet and only the server imports the database', async () => {
  const map = "import L from 'leaflet'\nexport const x = L\n"
  const base = "import { PrismaClient } from '@/generated/prisma/client'\nexport const x = PrismaClient\n"
  expect(await rulesBrokenBy('app/_map/probe.ts', map)).toEqual([])
  expect(await rulesBrokenBy('app/_server/probe.ts', base)).toEqual([])
  expect(await rulesBrokenBy('app/plan/probe.ts', map)).toContain('no-restricted-imports')
  expect(await rulesBrokenBy('app/plan/probe.ts', base)).toContain('no-restricted-imports')
  expect(await rulesBrokenBy('app/_map/probe.ts', base)).toContain('no-restricted-imports')
  expect(await rulesBrokenBy('app/_server/probe.ts', map)).toContain('no-restricted-imports')
})
