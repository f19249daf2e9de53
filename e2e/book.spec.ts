import { readFileSync } from 'node:fs'
import type { BrowserContext, Page } from '@playwright/test'
import { expectAccessible } from './support/expect-accessible'
import { away, DISTRICT } from './support/station'
import { expect, test } from './support/test'

/** Makes the file that is chosen and hands back its bytes as text, and its name. */
async function made(page: Page): Promise<{ pdf: string; name: string }> {
  await page.getByRole('button', { name: /^Make the PDF/ }).click()
  const save = page.getByRole('link', { name: 'Save the PDF' })
  await expect(save).toBeVisible({ timeout: 90_000 })
  const [download] = await Promise.all([page.waitForEvent('download'), save.click()])
  return { pdf: readFileSync(await download.path(), 'latin1'), name: download.suggestedFilename() }
}

test('an officer prints the sheets of a plan, on the paper that is remembered', async ({ page }) => {
  test.setTimeout(150_000)
  await page.goto(`/district/${DISTRICT}/plan/plan-gander-hill`)
  await page.getByRole('link', { name: 'Print sheets' }).click()
  await expect(page.getByRole('button', { name: 'Make the PDF of 3 sheets' })).toBeVisible()
  await expect(page.getByRole('radio', { name: 'Letter' })).toBeChecked()
  await page.getByRole('radio', { name: 'A4' }).check()
  await expectAccessible(page)
  const { pdf, name } = await made(page)
  expect(pdf.startsWith('%PDF-')).toBe(true)
  expect(pdf).toMatch(/\/MediaBox \[0 0 595\.\d+ 841\.\d+\]/)
  expect(name).toMatch(/\.pdf$/)
  await expect(page.getByText(/: 4 pages, \d+ kB/)).toBeVisible()
  await page.reload()
  await expect(page.getByRole('radio', { name: 'A4' })).toBeChecked()

  await page.getByRole('button', { name: 'Choose all' }).click()
  await page.getByRole('button', { name: /^Make the PDF/ }).click()
  await page.getByRole('button', { name: 'Cancel' }).click()
  await expect(page.getByRole('button', { name: /^Make the PDF/ })).toBeEnabled()
  await expect(page.getByRole('link', { name: 'Save the PDF' })).toHaveCount(0)
})

away('a draft site’s sheet is printed with the station out of reach', async ({ station, disks }) => {
  away.setTimeout(180_000)
  const device: BrowserContext = await station.openWithAll(disks.cab)
  const cab = device.pages()[0] ?? (await device.newPage())
  await station.stop()
  await cab.goto(`/district/${DISTRICT}/book?draft=draft-boat-launch`)
  await expect(cab.getByRole('button', { name: 'Make the PDF of 1 sheet' })).toBeVisible()
  const { pdf, name } = await made(cab)
  expect(pdf.startsWith('%PDF-')).toBe(true)
  expect(name).toContain('Boat launch')
  await device.close()
})
