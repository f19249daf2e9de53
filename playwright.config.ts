import { defineConfig } from '@playwright/test'
import { browserFlags, findBrowser } from './scripts/house/browser.mjs'

const executablePath = await findBrowser()

export default defineConfig({
  testDir: 'e2e',
  outputDir: 'test-results',
  workers: 2,
  fullyParallel: false,
  forbidOnly: true,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  globalSetup: './e2e/support/make-template.ts',
  reporter: [['list']],
  use: {
    locale: 'en-US',
    timezoneId: 'America/New_York',
    // A journey that is about the app on the device lets it be put there; for the others it would only be work.
    serviceWorkers: 'block',
    // What was done and how the page stood; a film of it would have every page painted anew all the time.
    trace: { mode: 'retain-on-failure', screenshots: false, sources: false },
    screenshot: 'only-on-failure',
    launchOptions: { executablePath, args: browserFlags() },
  },
})
