import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect } from './test'

/** What only the light of the screen can change. */
const RULES_OF_COLOUR = ['color-contrast', 'link-in-text-block']
/** A desk and a phone. */
const SIZES = [{ width: 1440, height: 900 }, { width: 390, height: 844 }]

/**
 * Fails with each thing the accessibility checker finds wrong with the page as it stands.
 *
 * @param rules those that are asked; all unless given
 */
export async function expectAccessible(page: Page, rules?: string[]): Promise<void> {
  // No page has a frame in it: then the checker need not put its findings together in a window of its own.
  const checker = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'], ...(rules && { runOnly: { type: 'rule', values: rules } }) })
  const { violations } = await checker.analyze()
  const found = violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)
  expect(found, 'accessibility').toEqual([])
}

/** Fails where anything on the page is wider than the page. */
export async function expectNoSideways(page: Page): Promise<void> {
  const [wider_px, width_px] = await page.evaluate(() => [document.documentElement.scrollWidth - document.documentElement.clientWidth, window.innerWidth])
  expect(wider_px, `wider than ${width_px}`).toBeLessThanOrEqual(0)
}

/** The page, opened once, by day and by night, on a desk and on a phone: the checker finds nothing wrong, and nothing is wider than the page. */
export async function expectAccessibleInEveryLook(page: Page): Promise<void> {
  for (const size of SIZES) {
    await page.setViewportSize(size)
    await page.emulateMedia({ colorScheme: 'light' })
    await expectAccessible(page)
    await page.emulateMedia({ colorScheme: 'dark' })
    await expectAccessible(page, RULES_OF_COLOUR)
    await expectNoSideways(page)
  }
}
