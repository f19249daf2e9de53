import type { Page } from '@playwright/test'
import { expectAccessibleInEveryLook } from './support/expect-accessible'
import { expect, test } from './support/test'

/** Opens a scenario with the keyboard. The page's clock is ours from here on: `runFor` plays the drill on. */
async function begin(page: Page, scenario: RegExp): Promise<void> {
  await page.clock.install()
  await page.goto('/drill')
  await page.getByRole('button', { name: scenario }).press('Enter')
  await expect(page.getByRole('region', { name: 'Pump panel' })).toBeFocused()
}

/** Holds a key of the panel down for a while. */
async function hold(page: Page, key: string, time_ms: number): Promise<void> {
  await page.keyboard.down(key)
  await page.clock.runFor(time_ms)
  await page.keyboard.up(key)
}

const reading = (page: Page, gauge: string) => page.getByRole('figure', { name: gauge }).getByRole('status')
const lever = (page: Page, name: string) => page.getByRole('slider', { name })

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 } })
  // It plays a minute of the drill, frame by frame.
  test.slow()

  test('a prime with the primer, by keyboard, is held and scored', async ({ page }) => {
    await begin(page, /^The primer works/)
    await lever(page, 'Intake').press('End')
    await page.keyboard.press('y')
    await page.clock.runFor(35_000)
    await expect(page.getByRole('button', { name: /^Primer/ })).toHaveAttribute('aria-pressed', 'true')
    await expect(reading(page, 'Intake')).toContainText('vacuum')
    await expectAccessibleInEveryLook(page)
    await page.keyboard.press('y')
    await hold(page, 'q', 2500)
    await hold(page, 't', 2500)
    await page.clock.runFor(15_000)
    await expect(page.getByRole('heading', { name: /^Prime held/ })).toBeFocused()
    await expect(page.getByText(/of 100 points/)).toBeVisible()
    await page.clock.runFor(5000)
    await expect(page.getByRole('img', { name: /Discharge pressure/ })).toBeVisible()
    await expectAccessibleInEveryLook(page)
  })
})

test.describe('on a desk', () => {
  test.use({ viewport: { width: 1280, height: 800 }, colorScheme: 'dark' })
  test.slow()

  test('an intake thrown open binds the pump, and the explanation names that move', async ({ page }) => {
    await begin(page, /^The primer fails/)
    for (const [key, control] of [['w', 'Tank to pump'], ['e', 'Tank fill'], ['q', 'Throttle']] as const) {
      await hold(page, key, 4000)
      await expect(lever(page, control)).toHaveValue('100')
    }
    await page.clock.runFor(4000)
    await lever(page, 'Intake').press('End')
    await page.clock.runFor(6000)
    await expect(page.getByRole('region', { name: 'Pump panel' }).getByText(/^Intake: .* Discharge: \d+/)).toBeAttached()
    await page.getByRole('button', { name: 'End run' }).press('Enter')
    await expect(page.getByRole('heading', { name: /Ended without a prime/ })).toBeVisible()
    await page.clock.runFor(5000)
    const bound = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: /^Air bound/ }) })
    await expect(bound).toContainText('It was this move: Intake from 0% to 100%')
    await expectAccessibleInEveryLook(page)

    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Export as CSV' }).press('Enter')
    expect((await download).suggestedFilename()).toBe('prime-drill-primer-fails.csv')

    await page.getByRole('textbox', { name: 'Kept for' }).fill('Second watch')
    await page.keyboard.press('Enter')
    await expect(page.getByText('Kept.', { exact: true })).toBeVisible()
    await page.getByRole('button', { name: 'Choose another' }).press('Enter')
    await expect(page.getByRole('rowheader', { name: 'Second watch' })).toBeVisible()
    await expectAccessibleInEveryLook(page)
    await page.getByRole('button', { name: 'Show', exact: true }).press('Enter')
    await expect(page.getByRole('heading', { name: /Ended without a prime/ })).toBeVisible()
  })
})

test('the pumpers and draft sites of a district can be practised with', async ({ page }) => {
  await page.goto('/district/ostrel-valley/drill')
  await page.getByRole('combobox', { name: 'Pumper' }).selectOption({ index: 1 })
  await page.getByRole('combobox', { name: 'Draft site' }).selectOption({ index: 1 })
  const chosen = await page.getByRole('combobox', { name: 'Pumper' }).locator('option:checked').textContent()
  await expect(page.getByText(`${chosen} at `)).toBeVisible()
  await page.getByRole('button', { name: /^The primer works/ }).press('Enter')
  await expect(page.getByRole('region', { name: 'Pump panel' })).toBeFocused()
})

test('on a phone every control is at least 48 px to the touch', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto('/drill')
  await page.getByRole('button', { name: /^The primer works/ }).press('Enter')
  const panel = page.getByRole('region', { name: 'Pump panel' })
  for (const control of [...await panel.getByRole('button').all(), ...await panel.getByRole('slider').all()]) {
    const box = await control.boundingBox()
    expect(box?.height).toBeGreaterThanOrEqual(48)
    expect(box?.width).toBeGreaterThanOrEqual(48)
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
})

test('who asked for less motion sees needles and levels, and nothing that runs along the pipes', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await begin(page, /^The primer fails/)
  for (const key of ['w', 'e', 'q']) await hold(page, key, 4000)
  const flow = page.locator('[data-part="tankFill-flow"]')
  const needle = page.locator('[data-part="discharge-needle"]')
  const [dashes, angle] = [await flow.getAttribute('stroke-dashoffset'), await needle.getAttribute('transform')]
  await lever(page, 'Throttle').press('Home')
  await page.clock.runFor(4000)
  expect(await flow.getAttribute('stroke-dashoffset')).toBe(dashes)
  expect(await needle.getAttribute('transform')).not.toBe(angle)
})
