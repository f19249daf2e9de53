import type { BrowserContext, Page } from '@playwright/test'
import { away, type Station } from './support/station'
import { expectAccessible } from './support/expect-accessible'
import { expect } from './support/test'

const page = async (device: BrowserContext): Promise<Page> => device.pages()[0] ?? device.newPage()

const LOGS = '/district/ostrel-valley/log'
const COUNT = 50

async function begin(phone: Page): Promise<string> {
  await phone.goto('/device')
  await expect(phone.getByText('This device works without the station')).toBeVisible({ timeout: 30_000 })
  await phone.goto(LOGS)
  await phone.getByLabel('Plan it is laid beside').selectOption({ label: 'Gander Hill farmhouse from the boat launch' })
  await phone.getByRole('button', { name: 'Begin the log' }).click({ timeout: 30_000 })
  await phone.waitForURL(/\/log\/[\w-]{20,}$/)
  await phone.getByLabel('Your post').selectOption({ index: 2 })
  await expect(phone.getByRole('heading', { name: 'Tenders' })).toBeVisible()
  return new URL(phone.url()).pathname.split('/').at(-1)!
}

/** Every press in turn: the tenders' next events, and levels between them. */
async function press(phone: Page, count: number): Promise<void> {
  const tenders = phone.getByRole('region', { name: 'Tenders' }).getByRole('listitem')
  const levels = phone.getByRole('group', { name: 'Water in the portable tanks' }).getByRole('button')
  const tenderCount = await tenders.count()
  for (let done = 0; done < count; done += 1) {
    if (done % 2 === 0) await levels.nth((done / 2) % 5).click()
    else await tenders.nth(((done - 1) / 2) % tenderCount).getByRole('button').first().click()
    // As a hand does: a second press on one row within a second is taken for the same.
    if (done % (2 * tenderCount) === 2 * tenderCount - 1) await phone.waitForTimeout(1000)
  }
}

const atStation = async (station: Station, logId: string) => {
  const answer = await fetch(`http://127.0.0.1:${station.port}/api/documents/${logId}/events?after=0`)
  return (await answer.json()) as { events: { id: string; post: { kind: string } }[]; total: number }
}

away('fifty events logged with the station gone, over a phone that dies, are at the station once each', async ({ station, disks }) => {
  away.setTimeout(240_000)
  let device = await station.openDevice(disks.pond)
  let phone = await page(device)
  await phone.setViewportSize({ width: 390, height: 844 })
  const logId = await begin(phone)
  const address = `${new URL(phone.url()).pathname}${new URL(phone.url()).search}`
  await station.stop()

  await press(phone, COUNT)
  await expect(phone.getByText(`${COUNT} entries on this device; the station laptop is out of reach`)).toBeVisible({ timeout: 30_000 })
  await expectAccessible(phone)
  // Not closed, but gone at once, as when a battery is empty.
  const died = device.waitForEvent('close')
  await (await device.newCDPSession(phone)).send('Browser.crash' as never).catch(() => undefined)
  await died

  device = await station.openDevice(disks.pond)
  phone = await page(device)
  await phone.setViewportSize({ width: 390, height: 844 })
  await phone.goto(address)
  await expect(phone.getByText(`${COUNT} entries on this device; the station laptop is out of reach`)).toBeVisible({ timeout: 30_000 })
  // At the same post as before.
  await expect(phone.getByRole('heading', { name: 'Tenders' })).toBeVisible()
  await station.start()
  await expect(phone.getByText('Every entry is saved on the station laptop')).toBeVisible({ timeout: 70_000 })
  const { events, total } = await atStation(station, logId)
  expect(total).toBe(COUNT)
  expect(new Set(events.map(({ id }) => id)).size).toBe(COUNT)
  expect(events.every(({ post }) => post.kind === 'dump')).toBe(true)
  await device.close()
})
