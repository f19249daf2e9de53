import type { BrowserContext } from '@playwright/test'
import { expectAccessible } from './support/expect-accessible'
import { NetworkStation, NETWORK_NAME } from './support/network-station'
import { expect, test } from './support/test'

const DISTRICT = 'ostrel-valley'
const other = { id: 'other-district', name: 'Other district', stations: [], sources: [], draftSites: [], hazards: [], roadNotes: [], apparatus: [], equipment: [] }

const served = new NetworkStation()
/** A phone: another browser session, that does not check who vouched for the certificate; tests/integration/network.test.ts does. */
const phone = (): Promise<BrowserContext> => served.browser.newContext({ ignoreHTTPSErrors: true, locale: 'en-US', viewport: { width: 390, height: 844 } })

test.beforeAll(() => served.start())
test.afterAll(() => served.close())

test('a device joins by a code, opens its district and nothing else, and is out when its grant is taken back', async ({ page: station }) => {
  test.setTimeout(120_000)
  expect((await station.request.post(`${served.address}/api/documents`, { data: { doc: other } })).status()).toBe(201)
  await station.goto(`${served.address}/devices`)
  await expect(station.getByText('Turned off: only this machine can open Millrace.')).toBeVisible()
  await station.getByRole('button', { name: 'Turn on' }).click()
  await expect(station.getByText('Other devices can reach this station.')).toBeVisible()
  if (await station.getByLabel('Address to use').isVisible()) await station.getByLabel('Address to use').selectOption(NETWORK_NAME)
  const { network } = (await (await station.request.get(`${served.address}/api/devices`)).json()) as { network: { port: number; guidePort: number; fingerprint: string } }
  await expect(station.getByText(network.fingerprint, { exact: true })).toBeVisible()
  await station.getByLabel('District').selectOption(DISTRICT)
  await station.getByRole('radio', { name: 'look and change' }).check()
  await station.getByRole('button', { name: 'Make a code' }).click()
  const code = await station.getByText(/^[2-9A-Z]{4}-[2-9A-Z]{4}$/).innerText()
  await expectAccessible(station)

  const base = `https://${NETWORK_NAME}:${network.port}`
  const context = await phone()
  const device = await context.newPage()
  await device.goto(`http://${NETWORK_NAME}:${network.guidePort}/`)
  await expect(device.getByText(network.fingerprint)).toBeVisible()
  await expectAccessible(device)

  // Before it has joined, every address is the page to join at, and no data comes.
  for (const place of ['/', '/devices', `/district/${DISTRICT}/plan`, '/drill']) {
    await device.goto(`${base}${place}`)
    await expect(device.getByRole('heading', { name: 'Join this station' })).toBeVisible()
  }
  // Asked by the page itself: only the browser knows the name, and it has the cookie.
  const ask = (at: string, headers: Record<string, string> = {}) => device.evaluate(async ([to, more]) => {
    const answer = await fetch(to, { headers: more })
    return { status: answer.status, text: await answer.text() }
  }, [at, headers] as const)
  const status = async (at: string) => (await ask(at)).status
  for (const at of ['/api/documents', `/api/documents/${DISTRICT}`, '/api/devices', `/api/districts/${DISTRICT}/archive`, '/demo/district.json']) expect(await status(at), at).toBe(401)
  await expectAccessible(device)
  await device.getByLabel('Code').fill('AAAA-AAAA')
  await device.getByLabel('Name of this device').fill('Engine 2 tablet')
  await device.getByRole('button', { name: 'Join' }).click()
  await expect(device.getByText('No code that is open now is this one.')).toBeVisible()

  // Scanned, the code comes with the address.
  await device.goto('about:blank')
  await device.goto(`${base}/join#${code}`)
  await expect(device.getByLabel('Code')).toHaveValue(code)
  await expect(device).toHaveURL(`${base}/join`)
  await device.getByLabel('Name of this device').fill('Engine 2 tablet')
  await device.getByRole('button', { name: 'Join' }).click()
  await expect(device).toHaveURL(`${base}/district/${DISTRICT}/plan`)
  await expect(device.getByRole('link', { name: /Gander Hill farmhouse/ })).toBeVisible()

  // One district and nothing else.
  const { documents } = JSON.parse((await ask('/api/documents')).text) as { documents: { id: string; districtId?: string }[] }
  expect(documents.length).toBe(9)
  expect(documents.every(({ id, districtId }) => id === DISTRICT || districtId === DISTRICT)).toBe(true)
  expect(await status(`/api/documents/${other.id}`)).toBe(404)
  for (const at of ['/api/devices', `/api/districts/${DISTRICT}/archive`, '/devices', `/district/${other.id}/plan`, '/demo/district.json']) expect(await status(at), at).toBe(403)
  expect((await ask(`/api/documents/${other.id}`, { 'x-millrace-way': 'station' })).status).toBe(404)
  await device.goto(`${base}/`)
  await expect(device.getByRole('heading', { name: 'Ostrel Valley (invented)' })).toBeVisible()
  await expect(device.getByText(other.name)).toHaveCount(0)
  await expect(device.getByText('Save an archive')).toHaveCount(0)
  expect((await context.cookies()).find(({ name }) => name.includes('millrace-device'))).toMatchObject({ httpOnly: true, secure: true, sameSite: 'Strict' })

  // It stays joined when the station is started again, which is still on.
  await station.goto('about:blank')
  await served.restart()
  const again = (await (await station.request.get(`${served.address}/api/devices`)).json()) as { network: { isOn: boolean; port: number; fingerprint: string } }
  expect(again.network).toMatchObject({ isOn: true, fingerprint: network.fingerprint })
  const newBase = `https://${NETWORK_NAME}:${again.network.port}`
  await device.goto(`${newBase}/district/${DISTRICT}/plan`)
  await expect(device.getByRole('link', { name: /Gander Hill farmhouse/ })).toBeVisible()
  expect(await status(`/api/documents/${DISTRICT}`)).toBe(200)

  await station.goto(`${served.address}/devices`)
  await expect(station.getByText('Engine 2 tablet: may look and change at Ostrel Valley (invented)')).toBeVisible()
  await station.getByRole('button', { name: 'Take back what Engine 2 tablet was let in to' }).click()
  await expect(station.getByText('Engine 2 tablet is out.')).toBeVisible()
  expect(await status(`/api/documents/${DISTRICT}`)).toBe(401)
  await device.goto(`${newBase}/district/${DISTRICT}/plan`)
  await expect(device.getByRole('heading', { name: 'Join this station' })).toBeVisible()
  await context.close()
})
