import { expectAccessibleInEveryLook } from './support/expect-accessible'
import { expect, test } from './support/test'

const SURVEY = '/district/ostrel-valley/survey'

test('the ground is shown under the roads, by day and by night, and stays off once it was turned off', async ({ page }) => {
  // The checker looks at it eight times.
  test.slow()
  await page.goto(SURVEY)
  const ground = page.getByRole('button', { name: 'Ground', exact: true })
  await expect(ground).toHaveAttribute('aria-pressed', 'true', { timeout: 30_000 })
  await expectAccessibleInEveryLook(page)
  await ground.click()
  await expect(ground).toHaveAttribute('aria-pressed', 'false')
  await page.reload()
  await expect(ground).toHaveAttribute('aria-pressed', 'false', { timeout: 30_000 })
  await expectAccessibleInEveryLook(page)
})
