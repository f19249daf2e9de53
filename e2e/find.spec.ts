import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

test('anything with a name is a few keys away, from any screen', async ({ page }) => {
  await page.goto('/')
  await page.getByRole('link', { name: 'Survey' }).first().click()
  await expect(page.getByRole('heading', { name: 'Survey' })).toBeAttached()
  await page.keyboard.press('Control+k')
  const ask = page.getByRole('combobox', { name: 'Find anything' })
  await expect(ask).toBeFocused()
  await ask.fill('tender 21')
  // Other journeys may have left copies of the district; its own come first.
  await expect(page.getByRole('option', { name: /^Tender 21/ }).first()).toHaveAttribute('aria-selected', 'true')
  await expectAccessible(page)
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/\/resources\?item=/)
  await expect(page.getByRole('button', { name: /^Tender 21/ })).toHaveAttribute('aria-expanded', 'true')

  // From a place to another of the same screen, by the button, as with a glove.
  await page.getByRole('button', { name: 'Find' }).click()
  await ask.fill("cooper's pond")
  await expect(page.getByRole('option', { name: /^Cooper’s Pond/ }).first()).toBeVisible()
  await ask.fill('no such thing')
  await expect(page.getByText('Nothing here has such a name.')).toBeVisible()
  await ask.fill('tender 22')
  await page.getByRole('option', { name: /^Tender 22/ }).first().click()
  await expect(page.getByRole('button', { name: /^Tender 22/ })).toHaveAttribute('aria-expanded', 'true')
  await expect(page.getByRole('button', { name: /^Tender 21/ })).toHaveAttribute('aria-expanded', 'false')
  await page.keyboard.press('Control+k')
  await page.keyboard.press('Escape')
  await expect(ask).toBeHidden()
})

test('the cheat sheets are found by name, follow the units in use, and pass the checker', async ({ page }) => {
  await page.goto('/')
  await page.keyboard.press('Control+k')
  await page.getByRole('combobox', { name: 'Find anything' }).fill('cheat')
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL('/help')
  const hose = page.getByRole('table', { name: 'Friction loss in hose: psi for each 100 ft' })
  // 0.08 · 10² for 100 ft: the handbook form with the coefficient of a municipal training presentation.
  await expect(hose.getByRole('row', { name: /^5 in/ }).getByRole('cell').last()).toHaveText('8')
  await expectAccessible(page)
  await page.getByRole('button', { name: 'Display' }).click()
  await page.getByRole('radio', { name: 'Metric, kPa', exact: true }).click()
  await expect(page.getByRole('table', { name: 'Friction loss in hose: kPa for each 30.5 m' })).toBeVisible()
})
