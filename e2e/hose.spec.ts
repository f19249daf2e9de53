import path from 'node:path'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

const PAGE = '/district/ostrel-valley/plan/plan-yarrow-bank/hose'
const ELEVATION = path.resolve(import.meta.dirname, '../public/demo/ostrel-valley-elevation.tif')

test.describe.configure({ mode: 'serial', timeout: 150_000 })

test('a lay is made and answered by keyboard: flow, every pressure, the orders of work; undo takes it back', async ({ page }) => {
  await page.goto(PAGE)
  await page.getByRole('button', { name: 'Add a hose lay' }).focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('region', { name: 'What it carries' })).toBeVisible({ timeout: 60_000 })
  // No elevation in the district yet: the page says so, and takes a rise that is entered.
  await expect(page.getByText(/It is reckoned as level ground/)).toBeVisible()
  const rise = page.getByLabel('Rise to the far end')
  await rise.fill('40 ft')
  await rise.press('Enter')
  await expect(page.getByText('as entered; straight slope between the ends')).toBeVisible({ timeout: 30_000 })
  await expect(page.getByText(/It is reckoned as level ground/)).toHaveCount(0)

  // As many pumpers as it takes for a flow to arrive.
  const more = page.getByLabel('One more pumper')
  for (let i = 0; i < 2; i++) {
    await more.focus()
    await more.selectOption({ index: 1 })
    await expect(page.getByLabel(`In the relay, ${i + 2}`)).toBeVisible()
  }
  const pumpers = page.getByRole('region', { name: 'Pumpers along the lay' }).first()
  await expect(pumpers).toBeVisible({ timeout: 60_000 })
  await expect(page.getByRole('region', { name: 'What it carries' }).getByText(/[\d,]+\sgpm/).first()).toBeVisible()
  await expect(pumpers.getByRole('row').nth(1)).toContainText(/drafts.*psi/)
  for (const name of ['To start', 'To shut down']) await expect(page.getByRole('region', { name }).getByRole('listitem').nth(2)).toBeVisible()
  const picture = page.getByRole('figure', { name: 'Pressure along the lay' })
  await picture.getByText('As a table').focus()
  await page.keyboard.press('Enter')
  await expect(picture.getByRole('row').nth(5)).toBeVisible()

  // A point of the way, added in the form and moved on the map by keys.
  await page.getByRole('button', { name: /^Points of the way/ }).press('Enter')
  await page.getByRole('button', { name: 'Add a point halfway' }).press('Enter')
  const field = page.getByLabel('Point 2', { exact: true })
  const before = await field.inputValue()
  const symbol = page.getByRole('button', { name: /^Point 2, point of the hose lay/ })
  await symbol.focus()
  for (const key of ['ArrowUp', 'ArrowUp', 'Enter']) await page.keyboard.press(key)
  await expect(field).not.toHaveValue(before)
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect(field).toHaveValue(before)
  await expectAccessible(page)

  await page.getByRole('button', { name: 'Remove Hose lay 1' }).click()
  await expect(page.getByText('No hose lay yet')).toBeVisible()
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect(page.getByLabel('In the relay, 3')).toBeVisible()
  await expect(page.getByText(/^Saved/).first()).toBeVisible()
})

test('with elevation in the district the ground is read along the way; the same in the dark on a phone', async ({ page }) => {
  await page.goto('/district/ostrel-valley/survey')
  await page.getByRole('button', { name: /^Elevation/ }).click()
  await page.getByLabel('Choose elevation files').setInputFiles(ELEVATION)
  await expect(page.getByText(/ostrel-valley-elevation\.tif is in/)).toBeVisible({ timeout: 30_000 })
  await page.setViewportSize({ width: 390, height: 844 })
  await page.emulateMedia({ colorScheme: 'dark' })
  await page.goto(PAGE)
  await expect(page.getByText('read from the elevation')).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText(/may be off by .* Measure the rise/)).toBeVisible()
  await expect(page.getByRole('figure', { name: 'Ground along the lay' })).toBeVisible()
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0)
  await expectAccessible(page)
})
