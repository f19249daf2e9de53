import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { chromium, expect, type BrowserContext, type Page } from '@playwright/test'
import { browserFlags, findBrowser } from '../../scripts/house/browser.mjs'
import { startServer, type RunningServer } from './start-server'
import { TEMPLATES } from './templates'
import { test } from './test'

/** A name that browsers do not take for this machine, and this machine's address for it. */
const NAME = 'station.test'

/** A station that can be switched off and on again at the same address, and a device with a disk of its own. */
export class Station {
  readonly folder = mkdtempSync(path.join(tmpdir(), 'millrace-away-'))
  server: RunningServer | undefined
  port = '0'
  /** Disks of devices that have all of the district. */
  readonly #broughtTo = new Set<string>()

  async start(): Promise<void> {
    this.server = await startServer(this.folder, { PORT: this.port, MILLRACE_NAMES: NAME })
    this.port = new URL(this.server.address).port
  }

  async stop(): Promise<void> {
    await this.server?.stop()
    this.server = undefined
  }

  get address(): string {
    return `http://${NAME}:${this.port}`
  }

  /** A browser of its own; opened twice on one folder it is the same device, taken up again. */
  async openDevice(disk: string): Promise<BrowserContext> {
    const executablePath = await findBrowser()
    const secure = [`--host-resolver-rules=MAP ${NAME} 127.0.0.1`, `--unsafely-treat-insecure-origin-as-secure=${this.address}`]
    return chromium.launchPersistentContext(disk, { ...(executablePath && { executablePath }), args: [...browserFlags(), ...secure], locale: 'en-US', baseURL: this.address, serviceWorkers: 'allow' })
  }

  /** The same with all of the district on it: brought the first time. */
  async openWithAll(disk: string): Promise<BrowserContext> {
    const device = await this.openDevice(disk)
    if (!this.#broughtTo.has(disk)) await bringHere(device.pages()[0] ?? (await device.newPage()))
    this.#broughtTo.add(disk)
    return device
  }
}

type Away = { station: Station }
type AwayOfWorker = { ownStation: Station; disks: { cab: string; pond: string } }

/** A journey of devices that keep the app, and of a station that goes and comes; at its start it is there. One for all journeys of a worker, as one would have it. */
export const away = test.extend<Away, AwayOfWorker>({
  ownStation: [
    async ({}, provide) => {
      const station = new Station()
      cpSync(TEMPLATES.demo, station.folder, { recursive: true })
      await provide(station)
      await station.stop()
      rmSync(station.folder, { recursive: true, force: true })
    },
    { scope: 'worker' },
  ],
  station: async ({ ownStation }, provide) => {
    if (!ownStation.server) await ownStation.start()
    await provide(ownStation)
  },
  disks: [
    async ({}, provide) => {
      const folder = mkdtempSync(path.join(tmpdir(), 'millrace-disks-'))
      await provide({ cab: path.join(folder, 'cab'), pond: path.join(folder, 'pond') })
      // A browser that ended a moment ago may still be writing.
      rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 })
    },
    { scope: 'worker' },
  ],
})

export const DISTRICT = 'ostrel-valley'

/** Opens the district and waits until the device has all of it. */
async function bringHere(one: Page): Promise<void> {
  await one.goto('/device')
  await expect(one.getByText('This device works without the station')).toBeVisible({ timeout: 30_000 })
  await one.goto(`/district/${DISTRICT}/plan`)
  await expect(one.getByRole('link', { name: /Gander Hill/ }).first()).toBeVisible()
  await one.goto('/device')
  await one.getByRole('button', { name: /^Bring .* here whole$/ }).click()
  await expect(one.getByText(/plans, 3 exercises, \d+ logs, with roads and map/)).toBeVisible({ timeout: 30_000 })
}
