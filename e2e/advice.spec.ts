import type { Page } from '@playwright/test'
import { expectAccessibleInEveryLook } from './support/expect-accessible'
import { expect, test } from './support/test'

const DEMO_PLAN = '/district/ostrel-valley/plan/plan-yarrow-bank'

// Roads are fetched and some sixty changed plans simulated: on a slow machine that takes its time.
test.describe.configure({ timeout: 180_000 })

const changes = (page: Page) => page.getByRole('list', { name: 'Changes that help, best first' }).getByRole('listitem')
async function advised(page: Page): Promise<void> {
  await page.goto(`${DEMO_PLAN}/advice`)
  await expect(changes(page).first()).toBeVisible({ timeout: 120_000 })
}
/** The expected flow in the answer above. */
async function expectedFlow(page: Page): Promise<number> {
  const answer = page.getByText(/[Ee]xpected [\d,]+\sgpm/).first()
  await expect(answer).toBeVisible({ timeout: 60_000 })
  return Number(/[Ee]xpected ([\d,]+)/.exec(await answer.innerText())?.[1]?.replace(',', ''))
}

test('the first change is applied as a variant, whose flow is higher by what was said', async ({ page }) => {
  await advised(page)
  const before = await expectedFlow(page)
  const first = changes(page).first()
  const gain = Number(/\+([\d,]+)/.exec(await first.innerText())?.[1]?.replace(',', ''))
  expect(gain).toBeGreaterThan(0)
  await first.getByRole('button', { name: /^Apply as a variant/ }).click()
  await page.waitForURL((url) => url.pathname.endsWith('/advice') && !url.pathname.includes('plan-yarrow-bank'))
  await expect(page.getByRole('heading', { level: 1 })).toContainText('variant')
  await expect.poll(() => expectedFlow(page), { timeout: 60_000 }).toBeGreaterThan(before)
  // Promised flows are shown rounded down to 5 or 10 gpm.
  expect(Math.abs((await expectedFlow(page)) - before - gain)).toBeLessThanOrEqual(11)
  await page.goto(`${DEMO_PLAN}/advice`)
  expect(await expectedFlow(page)).toBe(before)
})

test('a change applied here is taken back by one undo', async ({ page }) => {
  await advised(page)
  const before = await expectedFlow(page)
  await changes(page).first().getByRole('button', { name: /^Apply here/ }).click()
  await expect.poll(() => expectedFlow(page), { timeout: 60_000 }).toBeGreaterThan(before)
  await page.getByRole('status').filter({ hasText: 'Applied' }).getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => expectedFlow(page), { timeout: 60_000 }).toBe(before)
})

test('a change shows its working, and what stops shows what is left', async ({ page }) => {
  await advised(page)
  const open = changes(page).first().getByRole('button', { name: /^Working and what to check/ })
  await open.focus()
  await page.keyboard.press('Enter')
  await expect(open).toHaveAttribute('aria-expanded', 'true')
  await expect(changes(page).first()).toContainText('gain = expected flow with the change')
  const stops = page.getByRole('table', { name: 'What is left when one part stops' })
  await expect(stops.getByRole('row', { name: /Engine 21 at Covered Bridge/ })).toContainText(/0\sgpm/)
  await expect(page.getByText(/All water comes through one draft/)).toBeVisible()
  // What is lost is counted from what the whole plan holds: never less than nothing.
  await expect(stops.getByRole('columnheader', { name: /^Lost, of [\d,]+\sgpm/ })).toBeVisible()
  await expect(stops.getByText(/^−/)).toHaveCount(0)
  // What gains start from is the dependable flow of the headline.
  const headline = page.getByText(/Dependable [\d,]+\sgpm, expected/).first()
  await expect(headline).toBeVisible({ timeout: 60_000 })
  const [, dependable = ''] = /Dependable ([\d,]+)/.exec(await headline.innerText()) ?? []
  await expect(changes(page).first()).toContainText(new RegExp(`Dependable ${dependable}\\sgpm → `), { timeout: 60_000 })
  await page.getByRole('radio', { name: 'Gain for the effort' }).focus()
  await page.keyboard.press('ArrowRight')
  await expect(page.getByRole('radio', { name: 'Gain', exact: true })).toBeChecked()
})

test('whom to ask: asked by keyboard, read out, copied and printed', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await page.goto(`${DEMO_PLAN}/request`)
  const flow = page.getByRole('textbox', { name: 'Flow' })
  await flow.fill('250')
  await flow.press('Enter')
  await expect(page.getByText(/from .* after dispatch\. They hold [\d,]+\sgpm expected, [\d,]+\sgpm dependable/)).toBeVisible({ timeout: 120_000 })
  const text = await page.locator('pre').innerText()
  expect(text).toContain('250')
  expect(text).toMatch(/From Station/)
  await page.getByRole('button', { name: 'Copy' }).click()
  await expect(page.getByText('The list is copied.')).toBeVisible()
  expect((await page.evaluate(() => navigator.clipboard.readText())).trim()).toBe(text.trim())
  await page.emulateMedia({ media: 'print' })
  await expect(page.locator('pre')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Copy' })).toBeHidden()
  await page.emulateMedia({ media: 'screen' })
  await expect(page.getByRole('img', { name: /Most flow expected, by number of tenders/ })).toBeVisible()
  await expect(page.getByRole('table', { name: 'Best by number of tenders' }).getByRole('row')).toHaveCount(7)
})

test('advice and request are accessible by day and by night, on a desk and on a phone, and nothing is cut off at the side', async ({ page }) => {
  await advised(page)
  await changes(page).first().getByRole('button', { name: /^Working and what to check/ }).click()
  await expectAccessibleInEveryLook(page)
  await page.goto(`${DEMO_PLAN}/request`)
  await expect(page.locator('pre')).toBeVisible({ timeout: 120_000 })
  await expectAccessibleInEveryLook(page)
})
