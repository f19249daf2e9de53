import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { chromium, type Browser } from '@playwright/test'
import { browserFlags, findBrowser } from '../../scripts/house/browser.mjs'
import { startServer, type RunningServer } from './start-server'
import { TEMPLATES } from './templates'

/** A name that no browser takes for this machine. */
export const NETWORK_NAME = 'millrace.test'

/** A station that answers on the network by its own certificate, and a browser that finds it by name. */
export class NetworkStation {
  readonly folder = mkdtempSync(path.join(tmpdir(), 'millrace-network-'))
  #server: RunningServer | undefined
  #browser: Browser | undefined

  async start(): Promise<void> {
    cpSync(TEMPLATES.demo, this.folder, { recursive: true })
    await this.restart()
    const executablePath = await findBrowser()
    this.#browser = await chromium.launch({ ...(executablePath && { executablePath }), args: [...browserFlags(), `--host-resolver-rules=MAP ${NETWORK_NAME} 127.0.0.1`] })
  }

  /**
   * Starts it anew on the data it has.
   *
   * @param ports where it answers; any free ones unless given
   */
  async restart(ports: Readonly<Record<string, string>> = {}): Promise<void> {
    await this.switchOff()
    this.#server = await startServer(this.folder, { MILLRACE_NAMES: NETWORK_NAME, MILLRACE_NETWORK_PORT: '0', MILLRACE_GUIDE_PORT: '0', ...ports })
  }

  /** Where the station itself has it. */
  get address(): string {
    if (!this.#server) throw new Error('the station is not running')
    return this.#server.address
  }

  get browser(): Browser {
    if (!this.#browser) throw new Error('the browser is not open')
    return this.#browser
  }

  /** Switches it off until `restart`. */
  async switchOff(): Promise<void> {
    await this.#server?.stop()
    this.#server = undefined
  }

  async close(): Promise<void> {
    await this.#browser?.close()
    await this.switchOff()
    rmSync(this.folder, { recursive: true, force: true })
  }
}
