import { readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { compileShuttle, recordShuttle } from '@/lib/shuttle'
import { lineOf } from './log-text'
import { scenes } from './scenes'

// REWRITE_GOLDEN=1 writes the logs anew: read the difference before keeping it.
const isRewritten = process.env.REWRITE_GOLDEN === '1'

describe('the event log', () => {
  test.each(scenes)('$name goes as it went', ({ name, spec, options }) => {
    const { log } = recordShuttle(compileShuttle(spec), options)
    const text = `${log.map(lineOf).join('\n')}\n`
    const file = new URL(`./${name}.txt`, import.meta.url)
    if (isRewritten) writeFileSync(file, text)
    expect(text).toBe(readFileSync(file, 'utf8'))
  })
})
