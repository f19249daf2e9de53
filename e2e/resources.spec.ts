import type { Page } from '@playwright/test'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

test.use({ database: 'empty' })

/** A district with nothing in it, at its resources. */
async function openResources(page: Page, name: string): Promise<void> {
  await page.goto('/')
  await page.getByLabel('Name of the district').fill(name)
  await page.getByRole('button', { name: 'Start the district' }).click()
  await page.waitForURL(/\/survey$/)
  await page.getByRole('link', { name: 'Resources', exact: true }).click()
  await expect(page.getByRole('heading', { name: 'Resources', level: 1 })).toBeVisible()
}

async function add(page: Page, list: 'apparatus' | 'equipment', template: string): Promise<void> {
  await page.getByRole('button', { name: `Add ${list}` }).click()
  await page.getByRole('menuitem', { name: template, exact: true }).click()
}

async function enter(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true })
  await field.fill(text)
  await field.press('Enter')
}

const card = (page: Page, name: string) => page.getByRole('button', { name: new RegExp(`^${name.replace(/[()]/g, '\\$&')}(?![\\w(]| \\()`), expanded: false })

test('vehicles begin from templates, keep what is entered, and come back after a reload', async ({ page }) => {
  await openResources(page, 'Template township')
  await expect(page.getByText('No apparatus yet')).toBeVisible()
  await expectAccessible(page)
  await add(page, 'apparatus', 'Tender, 2,000 gal')
  await expect(page.getByLabel('Tank', { exact: true })).toHaveValue(/2,000/)
  await enter(page, 'Tank', '1800')
  await enter(page, 'Usable share', '95')
  await page.getByRole('button', { name: /^Tank: assumed/ }).click()
  await page.getByRole('radio', { name: /^handbook/ }).check()
  await page.getByRole('button', { name: 'Done' }).click()
  await expect(page.getByRole('button', { name: /^Tank: handbook/ })).toBeVisible()
  await expectAccessible(page)
  await expect(page.getByText('Saved')).toBeVisible()
  await page.reload()
  await expect(page.getByLabel('Tank', { exact: true })).toHaveValue(/1,?800/)
  await expect(page.getByLabel('Usable share', { exact: true })).toHaveValue('95')
})

test('a share beyond the whole is refused in the field', async ({ page }) => {
  await openResources(page, 'Share township')
  await add(page, 'apparatus', 'Tender, 2,000 gal')
  await enter(page, 'Usable share', '120')
  await expect(page.locator('main').getByRole('alert')).toContainText('Usable share: “120” is outside 0 to 100')
})

test('a figure that is typed counts as assumed until somebody says how it is known, and what was said goes on for the next one', async ({ page }) => {
  await openResources(page, 'Mark township')
  await add(page, 'apparatus', 'Tender, 2,000 gal')
  await enter(page, 'Dump rate', '1150')
  await expect(page.getByRole('button', { name: /^Dump rate: assumed/ })).toBeVisible()
  const field = page.getByLabel('Dump rate', { exact: true })
  await field.fill('1100')
  const ask = page.getByRole('group', { name: 'Dump rate: how is it known?' })
  for (const word of ['measured', 'handbook', 'assumed']) await expect(ask.getByRole('button', { name: word })).toHaveAttribute('aria-pressed', 'false')
  await ask.getByRole('button', { name: 'handbook' }).click()
  await expect(field).toBeFocused()
  await field.press('ArrowUp')
  await field.press('Enter')
  await expect(page.getByRole('button', { name: /^Dump rate: measured/ })).toBeVisible()
  await enter(page, 'Usable share', '93')
  await expect(page.getByRole('button', { name: /^Usable share: measured/ })).toBeVisible()
})

test('a copy does not take over what was measured on the first', async ({ page }) => {
  await openResources(page, 'Copy township')
  await add(page, 'apparatus', 'Tender, 3,000 gal')
  const rate = page.getByLabel('Dump rate', { exact: true })
  await rate.fill('1200')
  await rate.press('ArrowDown')
  await rate.press('Enter')
  await expect(page.getByRole('button', { name: /^Dump rate: measured/ })).toBeVisible()
  await page.getByRole('button', { name: 'Duplicate' }).click()
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Tender 1 (copy)')
  await expect(page.getByLabel('Dump rate', { exact: true })).toHaveValue(/1,?200/)
  await expect(page.getByRole('button', { name: /^Dump rate: assumed/ })).toBeVisible()
})

test('deleting can be taken back, with what the vehicle carried', async ({ page }) => {
  await openResources(page, 'Delete township')
  await add(page, 'apparatus', 'Pumper, 1,000 gpm')
  await add(page, 'equipment', 'Supply hose, 4 in, 1,000 ft')
  await page.getByLabel('Carried by').selectOption('Pumper 1')
  await card(page, 'Pumper 1').click()
  await page.getByRole('button', { name: 'Delete Pumper 1' }).click()
  await expect(page.getByText('Carried by none').first()).toBeVisible()
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click()
  await expect(card(page, 'Pumper 1')).toBeVisible()
  await expect(page.getByText('on Pumper 1').first()).toBeVisible()
})

test('a pumper’s own tests are kept in a table that shows how far the law is off them', async ({ page }) => {
  await openResources(page, 'Test township')
  await add(page, 'apparatus', 'Pumper, 1,000 gpm')
  await page.getByRole('button', { name: 'Add a test' }).first().click()
  await page.getByRole('button', { name: 'Keep this test' }).click()
  await expect(page.locator('main').getByRole('alert')).toContainText('is needed')
  for (const [label, text] of [['Lift, test 1', '10'], ['Flow, test 1', '1040'], ['Hard suction, test 1', '6']] as const) await enter(page, label, text)
  await page.getByRole('button', { name: 'Keep this test' }).click()
  await expect(page.getByRole('columnheader', { name: 'Law against test' })).toBeVisible()
  // One point alone fixes the law's one free number, so it is met.
  await expect(page.getByRole('cell', { name: /^[+−]?0%$/ })).toBeVisible()
  await expectAccessible(page)
  await page.getByRole('button', { name: 'Delete', exact: true }).click()
  await expect(page.getByRole('columnheader', { name: 'Law against test' })).toHaveCount(0)
})

test('search, kind and station narrow the list', async ({ page }) => {
  await openResources(page, 'Filter township')
  await add(page, 'apparatus', 'Pumper, 1,000 gpm')
  await add(page, 'apparatus', 'Tender, 2,000 gal')
  await add(page, 'equipment', 'Floating strainer')
  await page.getByLabel('Kind', { exact: true }).selectOption('Pumpers')
  await expect(card(page, 'Pumper 1')).toBeVisible()
  await expect(card(page, 'Tender 1')).toHaveCount(0)
  await page.getByLabel('Kind', { exact: true }).selectOption('All kinds')
  await page.getByLabel('Search the resources').fill('tender 2,000')
  await expect(card(page, 'Tender 1')).toBeVisible()
  await expect(card(page, 'Pumper 1')).toHaveCount(0)
})

test('on a phone it is one column, and nothing is cut off at the side', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await openResources(page, 'Narrow township')
  await add(page, 'apparatus', 'Pumper, 1,000 gpm')
  await expect(page.getByLabel('Rated capacity', { exact: true })).toHaveValue(/1,000/)
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  await expectAccessible(page)
})
