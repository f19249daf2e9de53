import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from '@playwright/test'
import { build } from 'esbuild'
import { wholeAnswer } from './support/whole-answer'

const root = fileURLToPath(new URL('..', import.meta.url))

type Page = { whole: { wholeAnswer: typeof wholeAnswer } }

// IEEE 754 fixes + − × ÷ √ to the last bit, and nothing else is used where chance is drawn (lib/random.ts).
test('the same seed gives the same run and the same nights in a browser and in Node, to the bit', async ({ page }) => {
  const { outputFiles: [file] } = await build({
    entryPoints: [`${root}e2e/support/whole-answer.ts`], tsconfig: `${root}tsconfig.json`, bundle: true, write: false, format: 'iife', globalName: 'whole', logLevel: 'silent',
  })
  await page.goto('about:blank')
  await page.addScriptTag({ content: file?.text ?? '' })
  for (const name of ['gander-hill', 'school', 'yarrow-bank']) {
    const bundle: unknown = JSON.parse(readFileSync(`${root}public/demo/bundles/${name}.json`, 'utf8'))
    const there = await page.evaluate((json) => (globalThis as unknown as Page).whole.wholeAnswer(json), bundle)
    expect(there.length).toBeGreaterThan(5000)
    expect(there === wholeAnswer(bundle), name).toBe(true)
  }
})
