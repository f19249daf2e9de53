import type { Page } from '@playwright/test'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

const LOGS = '/district/ostrel-valley/log'

async function begin(page: Page): Promise<string> {
  await page.goto('/')
  await page.getByRole('listitem').filter({ hasText: 'Ostrel Valley (invented)' }).getByRole('link', { name: 'Log', exact: true }).first().click()
  await page.waitForURL(/\/log$/)
  await page.getByLabel('Plan it is laid beside').selectOption({ label: 'Gander Hill farmhouse from the boat launch' })
  await page.getByRole('button', { name: 'Begin the log' }).click({ timeout: 30_000 })
  await page.waitForURL(/\/log\/[\w-]{20,}$/)
  return new URL(page.url()).pathname
}

const events = (page: Page) => page.getByRole('region', { name: 'Events' }).getByRole('listitem')

test('on a phone: pressed, undone, corrected, told, and laid together with a table and the paper', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  const address = await begin(page)
  await page.getByLabel('Your post').selectOption({ label: 'Dump: Gander Lane' })
  await page.getByRole('button', { name: 'Tender 11: Arrived' }).click()
  await expect(page.getByRole('button', { name: 'Tender 11: Dumping' })).toBeVisible()
  // Large enough for a glove: two and a half times what a fingertip needs (WCAG 2.2, 2.5.5: 44 px).
  const box = await page.getByRole('button', { name: 'Tender 11: Dumping' }).boundingBox()
  expect(box!.height).toBeGreaterThanOrEqual(66)
  expect(box!.width).toBeGreaterThanOrEqual(300)
  // The way back is under the thumb right after the press.
  const wayBack = page.getByRole('button', { name: /^Undo: Tender 11: Arrived/ })
  await expect(wayBack).toBeInViewport({ ratio: 1 })
  expect((await wayBack.boundingBox())!.height).toBeGreaterThanOrEqual(48)
  await page.waitForTimeout(1000)
  await page.getByRole('button', { name: 'Tender 11: Dumping' }).click()
  await expect(events(page)).toHaveCount(2)
  await page.getByRole('button', { name: /^Undo: Tender 11: Dumping/ }).click()
  await expect(page.getByRole('button', { name: 'Tender 11: Dumping', exact: true })).toBeVisible()
  await expect(events(page).first()).toContainText('undone')
  await page.getByRole('button', { name: 'Bring back Tender 11: Dumping' }).click()
  await expect(page.getByRole('button', { name: 'Tender 11: Empty', exact: true })).toBeVisible()
  await page.getByRole('button', { name: /^Undo: Tender 11: Dumping/ }).click()
  await expect(page.getByRole('button', { name: 'Tender 11: Dumping', exact: true })).toBeVisible()

  await page.getByRole('button', { name: 'Correct: Tender 11: Arrived' }).click()
  await page.getByLabel('Time', { exact: true }).fill('0:00:05')
  await page.getByRole('button', { name: 'Keep the correction' }).click()
  await expect(page.getByText('corrected')).toBeVisible()
  await page.getByRole('button', { name: 'Water in the portable tanks: 50%' }).click()
  await expect(page.getByRole('region', { name: 'Now' })).toContainText('estimate')
  // Typed and noted with one press.
  await page.getByRole('textbox', { name: 'Flow sent on from here' }).fill('450')
  await page.getByRole('button', { name: 'Flow sent on from here: Note it now' }).click()
  await expect(events(page).first()).toContainText(/Flow 450\sgpm/)
  await expect(page.getByText('Every entry is saved on the station laptop')).toBeVisible()
  await expectAccessible(page)

  const table = { name: 'fill.csv', mimeType: 'text/csv', buffer: Buffer.from('time,post,event,site,apparatus\n14:05,fill,arrived,Boat launch,Tender 12\n14:61,fill,full,Boat launch,Tender 12\n') }
  await page.getByRole('button', { name: /^Files and paper/ }).click()
  await page.locator('input[type=file]').setInputFiles(table)
  await expect(page.getByText('Row 3, column time: “14:61” is no time.')).toBeVisible()
  await page.locator('input[type=file]').setInputFiles({ ...table, buffer: Buffer.from(String(table.buffer).replace('14:61', '14:11')) })
  await page.getByRole('button', { name: 'Keep 2 events' }).click()
  await expect(page.getByText('2 events kept')).toBeVisible()
  await page.getByRole('button', { name: 'Undo', exact: true }).last().click()
  await expect(page.getByText('Taken back: 2 events')).toBeVisible()

  await page.goto(`${address}/paper`)
  await page.getByLabel('Form of which post').selectOption({ label: 'Fill: Boat launch' })
  const row = page.locator('form')
  await row.getByLabel('Tender').selectOption({ label: 'Tender 21' })
  await row.getByLabel('Arrived').fill('1420')
  await row.getByLabel('Arrived').press('Enter')
  await expect(row.getByLabel('Hooked up')).toBeFocused()
  await row.getByLabel('Left').fill('1431')
  await row.getByLabel('Left').press('Enter')
  await expect(page.getByText('2 events kept: Tender 21')).toBeVisible()
  await expect(page.getByText('Every entry is saved on the station laptop')).toBeVisible()
  await expectAccessible(page)
  const id = address.split('/').at(-1)!
  const { total } = (await (await page.request.get(`/api/documents/${id}/events`)).json()) as { total: number }
  // Two presses, an undo, that undone and done again, a correction, a level, a flow, two from the table and both taken back, two from the paper.
  expect(total).toBe(14)
  await page.goto(LOGS)
  await expectAccessible(page)
})
