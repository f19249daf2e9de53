import { expectAccessibleInEveryLook } from './support/expect-accessible'
import { expect, test } from './support/test'

const page1 = '/district/ostrel-valley/plan/plan-yarrow-bank/handbook'

test('the forms stand beside the simulation, term by term, with why they differ', async ({ page }) => {
  await page.goto('/district/ostrel-valley/plan/plan-yarrow-bank')
  await page.getByRole('link', { name: 'By the handbook' }).click()
  const figures = page.getByRole('region', { name: 'Five figures for one plan' })
  await expect(figures.getByText('Hauled-water form B (NFPA 1142 annex)', { exact: true })).toBeVisible({ timeout: 30_000 })
  const steps = page.getByRole('table', { name: 'From the form to the simulation' })
  await expect(steps.getByRole('row', { name: /Waiting for a bay −\d+\sgpm/ })).toBeVisible()
  const terms = page.getByRole('region', { name: 'Each tender, term by term' })
  await expect(terms.getByRole('row', { name: /^Round/ }).first()).toContainText('min')
  await expect(terms.getByText(/^It waits for a bay: .* more a round\.$/).first()).toBeVisible()
  await expect(terms.getByText(/^Together .* a round: .* by form B, .* simulated\.$/).first()).toBeVisible()
  await terms.getByRole('button', { name: /^Tender 22/ }).press('Enter')
  await expect(terms.getByRole('row', { name: /^Water a trip/ })).toHaveCount(2)
})

test('the steady-supply check says pass, fail or not known, line by line, and where to enter what is missing', async ({ page }) => {
  await page.goto(page1)
  const credit = page.getByRole('region', { name: 'Steady-supply check' })
  await expect(credit.getByText('An estimate, not a rating.')).toBeVisible({ timeout: 30_000 })
  await expect(credit.getByRole('heading', { name: /^Steady-supply check: 250\sgpm in 5 minutes$/ })).toBeVisible()
  // It is held against what can be depended on, once that is known, and says so.
  await expect(credit.getByText(/^Compared is the dependable flow of this plan, [\d,]+\sgpm/)).toBeVisible({ timeout: 60_000 })
  const [compared = ''] = /[\d,]+(?=\sgpm)/.exec(await credit.getByText(/^Compared is the dependable flow/).innerText()) ?? []
  await expect(credit.getByRole('listitem').filter({ hasText: 'A higher rate within 15 minutes' }).first()).toContainText(`of ${compared}`)
  await expect(credit.getByRole('listitem').filter({ hasText: '250 gpm within 5 minutes of first arrival' }).first()).toContainText('Pass')
  await expect(credit.getByRole('listitem').filter({ hasText: 'Source certificate' }).first()).toContainText('Not known')
  await credit.getByRole('link', { name: /^Enter for .*: day it was certified/ }).click()
  await expect(page).toHaveURL(/\/survey\?item=ostrel-river/)
})

test('a criterion typed in is kept with the plan and answered with the minute it fails, by keyboard alone', async ({ page }) => {
  await page.goto(page1)
  const criterion = page.getByRole('region', { name: 'Your own criterion' })
  await criterion.getByRole('textbox', { name: 'Flow' }).focus()
  await page.keyboard.type('250')
  await page.keyboard.press('Enter')
  await criterion.getByRole('textbox', { name: 'By, after dispatch' }).focus()
  await page.keyboard.type('20')
  await page.keyboard.press('Enter')
  await criterion.getByRole('textbox', { name: 'For', exact: true }).focus()
  await page.keyboard.type('120')
  await page.keyboard.press('Enter')
  await expect(criterion.getByText(/^Passed: 250\sgpm from 20\smin to 140\smin|^Passed: 250\sgpm from 20\smin to 2\sh 20\smin/)).toBeVisible({ timeout: 30_000 })
  await criterion.getByRole('textbox', { name: 'Flow' }).fill('900')
  await criterion.getByRole('textbox', { name: 'Flow' }).press('Enter')
  await expect(criterion.getByText(/^Failed at \d+\smin after dispatch: /)).toBeVisible({ timeout: 30_000 })
  await page.reload()
  await expect(criterion.getByText(/^Failed at \d+\smin after dispatch: /)).toBeVisible({ timeout: 30_000 })
  await criterion.getByRole('button', { name: 'Take the criterion away' }).click()
  await expect(criterion.getByText('No criterion yet. Give all three to have it answered.')).toBeVisible()
})

test('accessible by day and by night, on a desk and on a phone, nothing wider than the page', async ({ page }) => {
  await page.goto(page1)
  await expect(page.getByRole('region', { name: 'Steady-supply check' })).toBeVisible({ timeout: 30_000 })
  await expectAccessibleInEveryLook(page)
})
