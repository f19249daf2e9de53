import type { BrowserContext, Page } from '@playwright/test'
import { expectAccessible } from './support/expect-accessible'
import { away, DISTRICT, type Station } from './support/station'
import { expect } from './support/test'

const page = async (device: BrowserContext): Promise<Page> => device.pages()[0] ?? device.newPage()

async function setTank(one: Page, gallons: number): Promise<void> {
  const tank = one.getByLabel('Tank', { exact: true })
  await tank.fill(String(gallons))
  await tank.press('Enter')
}

const tankAtStation = async (station: Station, tender: string): Promise<{ tank: number | undefined; edits: number }> => {
  const root = `http://127.0.0.1:${station.port}/api/documents/${DISTRICT}`
  const { doc } = (await (await fetch(root)).json()) as { doc: { apparatus: { id: string; tank_gal?: number }[] } }
  const { history } = (await (await fetch(`${root}/edits?after=0`)).json()) as { history: unknown[] }
  return { tank: doc.apparatus.find(({ id }) => id === tender)?.tank_gal, edits: history.length }
}

away('fifty changes made with the station gone, over a killed page, come home once each', async ({ station, disks }) => {
  away.setTimeout(240_000)
  const { edits } = await tankAtStation(station, 'tender-11')
  let device = await station.openWithAll(disks.pond)
  let pond = await page(device)
  await station.stop()

  await pond.goto(`/district/${DISTRICT}/resources?item=tender-11`)
  await expect(pond.getByLabel('Tank', { exact: true })).toBeVisible()
  for (let change = 1; change <= 50; change += 1) await setTank(pond, 1500 + change)
  await expect(pond.getByText('50 changes kept here, to be sent')).toBeVisible()
  await expectAccessible(pond)
  await device.close()

  device = await station.openDevice(disks.pond)
  pond = await page(device)
  await pond.goto(`/district/${DISTRICT}/resources?item=tender-11`)
  await expect(pond.getByLabel('Tank', { exact: true })).toHaveValue('1550')
  await expect(pond.getByText('50 changes kept here, to be sent')).toBeVisible()
  await station.start()
  await expect(pond.getByText('Saved', { exact: true })).toBeVisible({ timeout: 60_000 })
  expect(await tankAtStation(station, 'tender-11')).toEqual({ tank: 1550, edits: edits + 50 })
  await device.close()
})

away('two devices change one plan with the network gone: what is apart merges, what clashes is shown until somebody chooses', async ({ station, disks }) => {
  away.setTimeout(240_000)
  const plan = `/district/${DISTRICT}/plan/plan-gander-hill`
  const devices = [await station.openWithAll(disks.cab), await station.openWithAll(disks.pond)]
  const [cab, pond] = [await page(devices[0]!), await page(devices[1]!)]
  await station.stop()
  for (const [one, held] of [[cab, '90 min'], [pond, '100 min']] as const) {
    await one.goto(plan)
    await one.getByRole('button', { name: /^Fire ground/ }).first().click()
    await one.getByRole('textbox', { name: 'Held for' }).fill(held)
    await one.getByRole('textbox', { name: 'Held for' }).press('Enter')
  }
  await pond.getByRole('textbox', { name: 'Time to the first line' }).fill('4 min')
  await pond.getByRole('textbox', { name: 'Time to the first line' }).press('Enter')
  await expect(pond.getByText('2 changes kept here, to be sent')).toBeVisible()
  // The answer is worked out on the device itself.
  await expect(pond.getByText(/after dispatch/).first()).toBeVisible({ timeout: 30_000 })

  await devices[1]!.close()
  await station.start()
  await expect(cab.getByText('Saved', { exact: true })).toBeVisible({ timeout: 60_000 })
  devices[1] = await station.openDevice(disks.pond)
  const back = await page(devices[1])
  await back.goto(plan)
  await expect(back.getByText('1 change to settle')).toBeVisible({ timeout: 60_000 })
  await devices[1].close()
  devices[1] = await station.openDevice(disks.pond)
  const again = await page(devices[1])
  await again.goto('/device')
  await expect(again.getByRole('region', { name: 'To be settled' })).toContainText(/was changed here to 100\smin, and elsewhere to 90\smin/)
  await expectAccessible(again)
  await again.getByRole('button', { name: 'Keep what was entered here' }).click()
  await expect(again.getByRole('region', { name: 'To be settled' })).toHaveCount(0)
  await expect(cab.getByRole('textbox', { name: 'Held for' })).toHaveValue(/100|1:40|1 h 40/, { timeout: 30_000 })
  await expect(cab.getByRole('textbox', { name: 'Time to the first line' })).toHaveValue(/4/)
  for (const device of devices) await device.close()
})

away('a plan begun at the pond is there, opens, and comes home when the station does', async ({ station, disks }) => {
  away.setTimeout(240_000)
  const device = await station.openWithAll(disks.pond)
  const pond = await page(device)
  await station.stop()
  await pond.goto('/')
  await pond.getByRole('link', { name: /Gander Hill/ }).first().click()
  await pond.waitForURL(/plan-gander-hill/)
  await pond.goto(`/district/${DISTRICT}/plan`)
  await pond.getByRole('button', { name: 'New plan' }).click()
  await pond.waitForURL(/\/plan\/[\w-]+$/)
  await expect(pond.getByRole('button', { name: /^Fire ground/ }).first()).toBeVisible()
  await pond.reload()
  await expect(pond.getByRole('button', { name: /^Fire ground/ }).first()).toBeVisible()
  const id = new URL(pond.url()).pathname.split('/').at(-1)!
  await station.start()
  await expect(async () => {
    const response = await fetch(`http://127.0.0.1:${station.port}/api/documents/${id}`)
    expect(response.status).toBe(200)
  }).toPass({ timeout: 60_000 })
  await device.close()
})
