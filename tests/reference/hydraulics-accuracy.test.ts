import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { hydraulicsAccuracy } from './hydraulics-accuracy'

test('the accuracy table is current: write it anew with npx tsx scripts/write-hydraulics-accuracy.ts', () => {
  const written = readFileSync(fileURLToPath(new URL('../../lib/hydraulics/ACCURACY.md', import.meta.url)), 'utf8')
  expect(written).toBe(hydraulicsAccuracy())
})
