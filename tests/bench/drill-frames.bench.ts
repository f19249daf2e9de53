import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { startServer } from '../../e2e/support/start-server'
import { browserFlags, ensureBrowser } from '../../scripts/house/browser.mjs'
import { at, framesOf, mean } from './support/browser-frames'
import { ratio } from './support/cost'

/**
 * Frames of the prime drill on a phone four times slower than this machine, twenty seconds of a scenario with levers moving,
 * against the same page before the drill begins.
 */
const REST_FRAMES = 300
const DRILL_FRAMES = 1200
const SLOWER = 4
/** A frame at 60 a second, and a little for the clock. */
const IN_TIME_MS = 17.5
/** A lever's key and how long it is held: the loop is opened, sped up, and the intake opened in steps. */
const hands = [['w', 3500], ['e', 3500], ['q', 3500], ['r', 300], ['r', 300], ['r', 300], ['r', 4000]] as const

const folder = mkdtempSync(path.join(tmpdir(), 'millrace-drill-frames-'))
try {
  execFileSync(process.execPath, ['scripts/make-database.mjs'], { env: { ...process.env, MILLRACE_DATA: folder } })
  const server = await startServer(folder)
  const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: browserFlags() })
  const page = await browser.newPage({ viewport: { width: 390, height: 844 } })
  await page.goto(`${server.address}/drill`)
  await page.getByRole('button', { name: /^The primer fails/ }).waitFor()
  const session = await page.context().newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
  await page.waitForTimeout(2000)
  const rest = await framesOf(page, REST_FRAMES)
  await page.getByRole('button', { name: /^The primer fails/ }).click()
  await page.waitForTimeout(1000)
  const drilled = await framesOf(page, DRILL_FRAMES, async (isDone) => { await moveLevers(page, isDone) })
  process.stdout.write([
    `Frames of the prime drill, 390 by 844, processor ${SLOWER} times slower, in a browser`,
    `  the page at rest   median ${at(rest, 0.5)} ms, 90 % under ${at(rest, 0.9)} ms, 99 % under ${at(rest, 0.99)} ms, longest ${at(rest, 1)} ms`,
    `  the drill          median ${at(drilled, 0.5)} ms, 90 % under ${at(drilled, 0.9)} ms, 99 % under ${at(drilled, 0.99)} ms, longest ${at(drilled, 1)} ms`,
    `  in time            ${((drilled.filter((time_ms) => time_ms < IN_TIME_MS).length / drilled.length) * 100).toFixed(1)} % of its frames under ${IN_TIME_MS} ms`,
    '',
  ].join('\n'))
  ratio('a frame of the prime drill on a slow phone against the page at rest', mean(drilled) / mean(rest))
  await browser.close()
  await server.stop()
} finally {
  rmSync(folder, { recursive: true, force: true })
}

async function moveLevers(page: Page, isDone: () => boolean): Promise<void> {
  for (const [key, time_ms] of hands) {
    if (isDone()) return
    await page.keyboard.down(key)
    await page.waitForTimeout(time_ms)
    await page.keyboard.up(key)
    await page.waitForTimeout(500)
  }
}
