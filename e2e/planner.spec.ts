import { expectAccessible } from './support/expect-accessible'
import type { Page } from '@playwright/test'
import { expect, test } from './support/test'

const DEMO_PLAN = '/district/ostrel-valley/plan/plan-yarrow-bank'

// Roads are fetched and weighed before the first answer: on a slow machine that takes its time.
test.describe.configure({ timeout: 150_000 })
const answered = (page: Page) => expect(page.getByText(/Limited by|No single part/)).toBeVisible({ timeout: 60_000 })

test('a first plan, from an empty district, with four places and two vehicles', async ({ page }) => {
  await page.goto('/')
  await page.getByLabel('Name of the district').fill('Trial district')
  await page.getByRole('button', { name: 'Start the district' }).click()
  await page.waitForURL(/\/district\/[^/]+\//)
  await page.goto(new URL(page.url()).pathname.replace(/\/district\/([^/]+)\/.*/, '/district/$1/plan'))
  await expect(page.getByText('No plan yet')).toBeVisible()
  await page.getByRole('button', { name: 'New plan' }).click()
  await page.waitForURL(/\/plan\/[^/]+$/)
  await expect(page.getByText('The plan has no fill site', { exact: false }).first()).toBeAttached()

  const map = page.getByRole('region', { name: 'Map', exact: true })
  const place = async (button: string, x: number, y: number) => {
    await page.getByRole('button', { name: button }).first().click()
    await expect(page.getByRole('status').filter({ hasText: 'Click the map' })).toBeVisible()
    await map.click({ position: { x, y } })
  }
  await place('Place a station', 200, 200)
  await place('Place a fill site', 420, 160)
  await page.getByRole('button', { name: 'Add a pumper' }).first().click()
  await page.getByRole('menuitem', { name: 'Pumper, 1,250 gpm' }).click()
  await place('Place a dump site', 420, 330)
  await page.getByRole('button', { name: 'Add a portable tank' }).click()
  await page.getByRole('menuitem', { name: 'Portable tank, 3,000 gal' }).click()
  await place('Place the fire ground', 440, 350)
  await page.getByRole('button', { name: /^Tenders/ }).click()
  await page.getByRole('button', { name: 'Add a tender' }).click()
  await page.getByRole('menuitem', { name: 'Tender, 2,000 gal' }).click()
  await expect(page.getByText(/expected [\d,]+\sgpm/i)).toBeVisible({ timeout: 60_000 })

  // Everything done is undone step by step, and done again.
  const undo = page.getByRole('button', { name: 'Undo' })
  await undo.click()
  await expect(page.getByText('No answer yet.')).toBeVisible()
  await page.getByRole('button', { name: 'Redo' }).click()
  await expect(page.getByText(/expected [\d,]+\sgpm/i)).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText('Saved', { exact: true })).toBeVisible()
  await page.reload()
  await expect(page.getByText(/expected [\d,]+\sgpm/i)).toBeVisible({ timeout: 60_000 })
})

test('a figure opens its working, and the working ends in what somebody entered', async ({ page }) => {
  await page.goto(DEMO_PLAN)
  await answered(page)
  await page.getByRole('button', { name: /^Figures/ }).click()
  await page.getByRole('button', { name: /^Hand figure/ }).click()
  const working = page.getByRole('region', { name: 'Working: Hand figure' })
  await expect(working).toContainText('Q = Σ usable / (fill + travel + dump)')
  await expect(working).toContainText('rating bureau page')
})

test('the string chart unfolds and says in words what it draws', async ({ page }) => {
  await page.goto(DEMO_PLAN)
  await answered(page)
  await page.getByRole('button', { name: 'Show the string chart' }).click()
  await expect(page.getByRole('img', { name: /loads? dumped, .* of its time waiting/ })).toBeVisible()
})

test('a site moves by keyboard, and the answer follows', async ({ page }) => {
  await page.goto(DEMO_PLAN)
  await answered(page)
  const site = page.getByRole('region', { name: 'Map', exact: true }).getByRole('button', { name: /fill site/ }).first()
  await site.focus()
  for (let step = 0; step < 4; step++) await page.keyboard.press('Shift+ArrowUp')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'Undo' })).toBeEnabled()
})

test('edits of two windows merge where they are apart and are shown where they clash', async ({ page, context }) => {
  const other = await context.newPage()
  for (const window of [page, other]) {
    await window.goto(DEMO_PLAN)
    await window.getByRole('button', { name: /^Fire ground/ }).click()
    await expect(window.getByRole('textbox', { name: 'Held for' })).toBeVisible()
  }
  await page.getByRole('textbox', { name: 'Held for' }).fill('90 min')
  await page.getByRole('textbox', { name: 'Held for' }).press('Enter')
  await other.getByRole('textbox', { name: 'Time to the first line' }).fill('3 min')
  await other.getByRole('textbox', { name: 'Time to the first line' }).press('Enter')
  await expect(other.getByRole('textbox', { name: 'Held for' })).toHaveValue(/90|1:30|1 h 30/)
  await expect(page.getByRole('textbox', { name: 'Time to the first line' })).toHaveValue(/3/)
})

for (const scheme of ['light', 'dark'] as const) {
  for (const size of [{ width: 1440, height: 900 }, { width: 390, height: 844 }]) {
    test.describe(`the planner at ${size.width} in ${scheme}`, () => {
      test.use({ viewport: size, colorScheme: scheme })

      test('is accessible, and nothing is cut off at the side', async ({ page }) => {
        await page.goto(DEMO_PLAN)
        await answered(page)
        await page.getByRole('button', { name: /^Fill site/ }).first().click()
        await expectAccessible(page)
        expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true)
      })
    })
  }
}
