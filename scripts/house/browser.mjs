/** A browser for the tests: one that is there, else one that can be installed. */
import { existsSync } from 'node:fs'
import path from 'node:path'
import { inRoot } from './places.mjs'
import { run, runNode } from './run.mjs'
import { PlainError, sayProgress } from './say.mjs'

const USUAL = {
  linux: ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/usr/bin/google-chrome-stable', '/snap/bin/chromium'],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ],
  win32: ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) =>
    process.env[name] ? [path.join(process.env[name], 'Google', 'Chrome', 'Application', 'chrome.exe')] : [],
  ),
}

/** Playwright's own browser, if one was installed. */
async function findPlaywrightBrowser() {
  const { chromium } = await import('@playwright/test')
  const file = chromium.executablePath()
  return file && existsSync(file) ? file : undefined
}

/** Path of a Chromium or Chrome, or undefined; MILLRACE_BROWSER comes first and must then exist. */
export async function findBrowser() {
  const named = process.env.MILLRACE_BROWSER
  if (named) {
    if (!existsSync(named)) throw new PlainError(`MILLRACE_BROWSER is ${named} and there is no such file.`)
    return named
  }
  return (USUAL[process.platform] ?? []).find((file) => existsSync(file)) ?? (await findPlaywrightBrowser())
}

async function installByPackageManager() {
  const isRoot = process.getuid?.() === 0
  if (process.platform !== 'linux' || !isRoot || !existsSync('/usr/bin/apt-get')) return
  sayProgress('Installing a browser for the tests (Debian package chromium)')
  const env = { DEBIAN_FRONTEND: 'noninteractive' }
  await run('apt-get', ['update', '-qq'], { quiet: true, env })
  await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { quiet: true, env })
}

async function installByPlaywright() {
  sayProgress('Installing a browser for the tests (Playwright)')
  await runNode([inRoot('node_modules/@playwright/test/cli.js'), 'install', 'chromium'], { quiet: true })
}

/** @throws PlainError if there is none and none can be installed: browser tests are never left out */
export async function ensureBrowser() {
  for (const attempt of [undefined, installByPackageManager, installByPlaywright]) {
    await attempt?.()
    const found = await findBrowser()
    if (found) return found
  }
  throw new PlainError(
    'The browser tests need Chromium or Chrome and none could be installed: install one, or set MILLRACE_BROWSER to its path.',
  )
}

/** Quiet and self-contained: no look-ups of its own, no pictures drawn by a graphics card. */
export const browserFlags = () => [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
]
