import { expectAccessibleInEveryLook } from './support/expect-accessible'
import { expect, test } from './support/test'

const both = '/district/ostrel-valley/compare?plans=plan-yarrow-bank,plan-gander-hill'

test('plans ticked on the list stand side by side, what meets its need by the word', async ({ page }) => {
  await page.goto('/district/ostrel-valley/plan')
  await page.getByRole('checkbox', { name: 'Compare Yarrow Bank barn from the Covered Bridge', exact: true }).press('Space')
  await page.getByRole('checkbox', { name: 'Compare Gander Hill farmhouse from the boat launch', exact: true }).press('Space')
  await page.getByRole('link', { name: 'Compare', exact: true }).click()
  await expect(page).toHaveURL(/compare\?plans=/)
  const figures = page.getByRole('region', { name: 'Figures' }).last()
  const sustained = figures.getByRole('row', { name: /^Expected flow/ })
  // Yarrow Bank falls short of its need, Gander Hill meets its own: that counts, not the higher flow.
  await expect(sustained.getByRole('cell', { name: /gpm.*short by [\d,]+\sgpm, expected/ })).toHaveCount(1, { timeout: 40_000 })
  await expect(sustained.getByRole('cell', { name: /gpm.*meets the need/ })).toHaveCount(1)
  await expect(figures.getByText('highest', { exact: true })).toHaveCount(0)
  // Which flow a plan falls short by is said, of both.
  await expect(figures.getByRole('row', { name: /^Dependable flow/ }).getByRole('cell', { name: /gpm.*short by [\d,]+\sgpm, dependable/ })).toHaveCount(1, { timeout: 60_000 })
  // First over each other, told apart by letter; then each its own.
  await expect(page.getByRole('group', { name: 'Supply strips of all plans over each other' }).getByText(/limits the flow/)).toHaveCount(2)
  await expect(page.getByRole('img', { name: /loads dumped, .*loads dumped/ })).toBeVisible()
  await page.getByRole('button', { name: /^B Gander Hill/ }).press('Enter')
  await expect(page.getByRole('button', { name: /^B Gander Hill/ })).toHaveAttribute('aria-pressed', 'true')
  await page.getByRole('radio', { name: 'Over each other' }).focus()
  await page.keyboard.press('ArrowRight')
  await expect(page.getByRole('group', { name: /^Supply strip:/ })).toHaveCount(2)
  await expect(page.getByRole('figure', { name: 'Shuttle string chart' })).toHaveCount(2)
})

test('what differs in the documents is said in words, and a plan that is blocked says why it has no figure', async ({ page }) => {
  await page.goto('/district/ostrel-valley/plan')
  await page.getByRole('button', { name: 'New plan' }).click()
  await expect(page).toHaveURL(/\/plan\/[^/]+$/)
  const id = new URL(page.url()).pathname.split('/').at(-1) ?? ''
  await page.goto(`${both},${id}`)
  const differences = page.getByRole('region', { name: 'What differs in the plans' }).last()
  await expect(differences.getByRole('row', { name: /^Tenders/ })).toBeVisible({ timeout: 30_000 })
  const figures = page.getByRole('region', { name: 'Figures' }).last()
  await expect(figures.getByRole('row', { name: /^Expected flow/ }).getByRole('cell').last()).toContainText(/^none: /, { timeout: 40_000 })
})

test('a plan taken out leaves the address too, and one alone asks for another', async ({ page }) => {
  await page.goto(both)
  await page.getByRole('checkbox', { name: /^Gander Hill/ }).press('Space')
  await expect(page).toHaveURL(/plans=plan-yarrow-bank$/)
  await expect(page.getByText('Choose at least two plans')).toBeVisible()
})

test('accessible by day and by night, on a desk and on a phone, nothing wider than the page', async ({ page }) => {
  await page.goto(both)
  await expect(page.getByRole('figure', { name: 'String charts of all plans over each other' })).toBeVisible({ timeout: 40_000 })
  await expectAccessibleInEveryLook(page)
})
