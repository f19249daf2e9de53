import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect } from './test'

/** Fails with each thing the accessibility checker finds wrong with the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  const found = violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)
  expect(found, 'accessibility').toEqual([])
}
