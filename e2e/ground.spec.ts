import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

const SURVEY = '/district/ostrel-valley/survey'

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`by ${colorScheme}`, () => {
    test.use({ colorScheme })
    test('the ground is shown under the roads, and stays off once it was turned off', async ({ page }) => {
      await page.goto(SURVEY)
      const ground = page.getByRole('button', { name: 'Ground', exact: true })
      await expect(ground).toHaveAttribute('aria-pressed', 'true', { timeout: 30_000 })
      await expectAccessible(page)
      await ground.click()
      await expect(ground).toHaveAttribute('aria-pressed', 'false')
      await page.reload()
      await expect(ground).toHaveAttribute('aria-pressed', 'false', { timeout: 30_000 })
      await expectAccessible(page)
    })
  })
}
