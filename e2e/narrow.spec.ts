import type { Page } from '@playwright/test'
import { expect, test } from './support/test'

test.use({ viewport: { width: 390, height: 844 } })
// Every page in turn, each until its figures are there.
test.describe.configure({ timeout: 240_000 })

const PLAN_PAGES = ['', '/doubt', '/advice', '/request', '/handbook', '/hose']

/** Nothing of the page, nor of the part of it that scrolls, is wider than the phone. */
async function expectNarrow(page: Page, address: string): Promise<void> {
  await page.goto(address)
  await expect(page.locator('main')).toBeVisible()
  await expect(page.locator('main [aria-busy="true"]')).toHaveCount(0, { timeout: 60_000 })
  const wide = await page.evaluate(() => {
    const root = document.scrollingElement ?? document.documentElement
    const main = document.querySelector('main') ?? root
    return { page: root.scrollWidth - root.clientWidth, main: main.scrollWidth - main.clientWidth }
  })
  expect.soft(wide, address).toEqual({ page: 0, main: 0 })
}

test('no page of the demo district scrolls sideways on a phone', async ({ page }) => {
  const district = '/district/ostrel-valley'
  const plans = ['plan-school', 'plan-yarrow-bank'].flatMap((plan) => PLAN_PAGES.map((one) => `${district}/plan/${plan}${one}`))
  const others = ['/', '/device', '/help', ...['survey', 'resources', 'plan', 'compare', 'drill', 'book', 'draft/draft-boat-launch', 'draft/draft-boat-launch/card', 'log', 'log/log-yarrow-bank', 'log/log-yarrow-bank?post=attack', 'log/log-yarrow-bank/form', 'log/log-yarrow-bank/paper'].map((one) => `${district}/${one}`)]
  for (const address of [...others, ...plans]) await expectNarrow(page, address)
})

test('no page of a new district scrolls sideways on a phone', async ({ page }) => {
  await page.goto('/')
  await page.getByLabel('Name of the district').fill('Fire protection district of the upper valley and its hamlets')
  await page.getByRole('button', { name: 'Start the district' }).click()
  await page.waitForURL(/\/survey/)
  const district = new URL(page.url()).pathname.replace(/\/survey.*/, '')
  await page.goto(`${district}/plan`)
  await page.getByRole('button', { name: 'New plan' }).click()
  await page.waitForURL(/\/plan\/[^/]+$/)
  const plan = new URL(page.url()).pathname
  for (const one of ['survey', 'resources', 'plan', 'compare', 'log', 'drill', 'book']) await expectNarrow(page, `${district}/${one}`)
  for (const one of PLAN_PAGES) await expectNarrow(page, `${plan}${one}`)
})
