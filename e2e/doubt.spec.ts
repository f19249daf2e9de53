import type { Page } from '@playwright/test'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

const PLAN = '/district/ostrel-valley/plan/plan-school'

// The nights wait for the answer, and that for the roads.
test.describe.configure({ timeout: 150_000 })
const workedOut = (page: Page) => expect(page.getByRole('heading', { name: 'What to go and measure' })).toBeVisible({ timeout: 90_000 })

test('how sure the answer is, and from there to the number to measure', async ({ page }) => {
  await page.goto(PLAN)
  // The first answer does not wait for the nights; they are told in it once they are done.
  await expect(page.getByText(/Not yet tested for doubt: expected [\d,]+\sgpm, needed/)).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText(/Dependable [\d,]+\sgpm, expected [\d,]+\sgpm, needed 1,000\sgpm/)).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText(/No water for \d+\smin, the gap before supply: the first engine’s tank is empty/)).toBeVisible()
  await expect(page.getByText(/Short by [\d,]+\sgpm of the 1,000\sgpm needed, counting what can be depended on/)).toBeVisible()
  const first = await page.getByText(/First to measure \(\d+% of the doubt/).innerText()

  await page.getByRole('navigation', { name: 'Pages of this plan' }).getByRole('link', { name: 'How sure' }).click()
  await workedOut(page)
  const flow = page.getByRole('region', { name: 'Doubt about the flow' })
  await expect(flow.getByRole('link').first()).toContainText(/\d+%/)
  // One ranking: the headline names what stands on top here, with its share.
  const [share = '', words = ''] = (/\((\d+%).*?\): (.*?) Now /.exec(first) ?? []).slice(1)
  expect(words).not.toBe('')
  await expect(flow.getByRole('link').first()).toContainText(words)
  await expect(flow.getByRole('link').first()).toContainText(share)
  for (const name of ['Flow that is held, and on how many nights', 'Chance of going short of the planned demand']) await expect(page.getByRole('figure', { name })).toBeVisible()

  // Every picture also stands in a table, opened by keyboard.
  const picture = page.getByRole('figure', { name: 'Flow that is held, and on how many nights' })
  await picture.getByText('As a table').focus()
  await page.keyboard.press('Enter')
  await expect(picture.getByRole('row')).toHaveCount(8)
  await expectAccessible(page)

  await page.getByRole('link', { name: /Time the drive between .*School Drive/ }).first().focus()
  await page.keyboard.press('Enter')
  await page.waitForURL(/\?part=road/)
  await expect(page.getByRole('button', { name: /^Road/, expanded: true })).toBeVisible()
})

test('the same in the dark on a phone, and it can be stopped', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await page.emulateMedia({ colorScheme: 'dark' })
  await page.goto(`${PLAN}/doubt`)
  // While somebody types the nights wait, so that there is time to stop them.
  let isTyping = true
  const typing = (async () => { while (isTyping) { await page.keyboard.press('Shift'); await page.waitForTimeout(100) } })()
  await page.getByRole('button', { name: 'Cancel' }).click({ timeout: 90_000 })
  isTyping = false
  await typing
  await expect(page.getByRole('button', { name: 'Work it out' })).toBeVisible()
  await page.getByRole('button', { name: 'Work it out' }).click()
  await workedOut(page)
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0)
  await expectAccessible(page)
})
