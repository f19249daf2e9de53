import { readFileSync } from 'node:fs'
import type { BrowserContextOptions, Page } from '@playwright/test'
import { expectAccessible } from './support/expect-accessible'
import { NetworkStation, NETWORK_NAME } from './support/network-station'
import { expect, test } from './support/test'

const SITE = 'Boat launch'
const EXERCISE = 'seats-journey'

const served = new NetworkStation()
test.beforeAll(() => served.start())
test.afterAll(() => served.close())

/** An exercise at its eighteenth minute, with one trouble that who leads lets come. */
function exercise() {
  const bundle = JSON.parse(readFileSync('public/demo/bundles/gander-hill.json', 'utf8')) as { plan: { fillSites: { id: string; name: string }[] }; district: { id: string } }
  const fillSiteId = bundle.plan.fillSites.find(({ name }) => name === SITE)!.id
  return {
    format: 'millrace-exercise', version: 1, id: EXERCISE, name: 'Night at the farm', districtId: bundle.district.id, bundle, facts: [], notes: [],
    injects: [{ id: 'stops', title: 'Secret title', told: 'Engine 11 has lost its prime', trigger: { kind: 'hand' }, change: { kind: 'fillRate', fillSiteId, rateShare: 0 } }, { id: 'again', title: 'Secret second', told: 'It has lost it again', trigger: { kind: 'hand' }, change: { kind: 'fillRate', fillSiteId, rateShare: 0 } }],
    clock: { at_s: 1080, isRunning: false, speedFactor: 5, setAt: '2026-01-01T00:00:00.000Z' },
  }
}

/** What the pages threw. That the station is away, which is part of the journey, stands on their consoles and is no such thing. */
const thrown: string[] = []
async function open(options: BrowserContextOptions): Promise<Page> {
  const context = await served.browser.newContext({ locale: 'en-US', ...options })
  context.on('weberror', (error) => thrown.push(error.error().stack ?? error.error().message))
  return context.newPage()
}

/** Joins by the code that the station shows, on a device that wants no motion. */
async function join(base: string, code: string, name: string): Promise<Page> {
  const device = await open({ ignoreHTTPSErrors: true, viewport: { width: 390, height: 844 }, reducedMotion: 'reduce' })
  await device.goto(`${base}/join#${code}`)
  await device.getByLabel('Name of this device').fill(name)
  await device.getByRole('button', { name: 'Join' }).click()
  await expect(device).toHaveURL(`${base}/seat`)
  return device
}

test('a seat on a phone hears what its place knows and decides; over a reload, a restart of the station and what was decided while cut off', async () => {
  test.setTimeout(120_000)
  const lead = await open({})
  const made = exercise()
  expect((await lead.request.post(`${served.address}/api/documents`, { data: { doc: made } })).status()).toBe(201)
  const { network } = (await (await lead.request.put(`${served.address}/api/devices`, { data: { isOn: true } })).json()) as { network: { port: number } }
  const base = `https://${NETWORK_NAME}:${network.port}`

  await lead.goto(`${served.address}/district/${made.districtId}/exercise/${EXERCISE}`)
  await expect(lead.getByText('Live', { exact: true })).toBeVisible()
  await lead.getByRole('button', { name: /^Seats on other devices/ }).click()
  await lead.getByLabel('Seat', { exact: true }).selectOption({ label: `Fill site, ${SITE}` })
  await lead.getByRole('button', { name: 'Make a code' }).click()
  const code = await lead.getByText(/^[2-9A-Z]{4}-[2-9A-Z]{4}$/).innerText()
  await expectAccessible(lead)

  const seat = await join(base, code, 'R. Moss')
  await expect(seat.getByRole('heading', { name: `Fill site, ${SITE}` })).toBeVisible()
  await expect(seat.getByText('Live', { exact: true })).toBeVisible()
  await expect(seat.getByRole('timer')).toHaveText('18:00')
  await expect(seat.getByText('the clock stands')).toBeVisible()
  await expect(seat.getByText(`${SITE}: drawn`)).toBeVisible()
  await expect(seat.getByText('Water on the fire')).toHaveCount(0)
  await expect(lead.getByText(`Fill site, ${SITE}: R. Moss`)).toBeVisible()
  await expect(lead.getByText('is here')).toBeVisible()
  expect(await seat.evaluate(() => document.scrollingElement!.scrollWidth)).toBeLessThanOrEqual(390)
  await expectAccessible(seat)

  // Its grant opens this seat and nothing else.
  const status = (at: string) => seat.evaluate(async (to) => (await fetch(to)).status, at)
  for (const at of ['/api/documents', `/api/documents/${EXERCISE}`, `/api/documents/${EXERCISE}/edits`, `/api/documents/${EXERCISE}/live`, '/api/devices', '/demo/district.json']) expect(await status(at), at).toBe(401)
  await seat.goto(`${base}/district/${made.districtId}/exercise/${EXERCISE}`)
  await expect(seat).toHaveURL(`${base}/seat`)

  // The clock is the same on both, and what comes about is told within the same moment.
  await lead.getByRole('button', { name: 'Go on' }).click()
  await expect(seat.getByRole('timer')).toHaveText(/^18:[1-5]\d/)
  await lead.getByRole('button', { name: 'Pause' }).click()
  await expect(seat.getByText('the clock stands')).toBeVisible()
  expect(await seat.getByRole('timer').innerText()).toBe(await lead.getByRole('timer').innerText())
  const well = seat.getByRole('button', { name: 'The pump is well again' })
  await expect(well).toBeDisabled()
  await expect(seat.getByText('The pump here runs as it should.')).toBeVisible()
  await lead.getByRole('button', { name: 'Let it come now: Secret title' }).click()
  const heard = seat.getByRole('list', { name: 'What came about' })
  await expect(heard).toContainText('Engine 11 has lost its prime')
  expect(await seat.content()).not.toContain('Secret title')
  expect(await seat.evaluate(() => document.getAnimations().length), 'nothing moves where motion is not wanted').toBe(0)

  // By the keyboard alone.
  await expect(well).toBeEnabled()
  await well.focus()
  await seat.keyboard.press('Enter')
  await expect(heard).toContainText(`${SITE}: the pump is well again by Fill site, ${SITE}: R. Moss`)
  const log = lead.locator('section', { has: lead.getByRole('heading', { name: /What came about/ }) })
  await expect(log).toContainText(`the pump is well again by Fill site, ${SITE}: R. Moss`)

  await seat.reload()
  await expect(heard.getByRole('listitem')).toHaveCount(2)
  await lead.getByRole('button', { name: 'Let it come now: Secret second' }).click()
  await expect(heard.getByRole('listitem')).toHaveCount(3)

  // The station goes away: the seat says so, keeps what is written meanwhile over a break, and brings it when it is back.
  const port = new URL(served.address).port
  await served.switchOff()
  await expect(seat.getByText(/^Cut off: last heard at/)).toBeVisible()
  // The button wakes as the entry is left, and is not passed over.
  await seat.getByLabel('Note', { exact: true }).fill('Trying the loop')
  await seat.keyboard.press('Tab')
  await expect(seat.getByRole('button', { name: 'Write it down' })).toBeFocused()
  await seat.keyboard.press('Enter')
  await well.click()
  await expect(seat.getByText(/^Not at the station yet: Trying the loop\. It is kept on this device/)).toBeVisible()
  await expectAccessible(seat)
  await served.restart({ PORT: port, MILLRACE_NETWORK_PORT: String(network.port) })
  await expect(seat.getByText('Live', { exact: true })).toBeVisible()
  await expect(seat.getByText(/^Not at the station yet/)).toHaveCount(0)
  await expect(heard.getByRole('listitem')).toHaveCount(5)
  await expect(lead.getByText('Live', { exact: true })).toBeVisible()
  await expect(log).toContainText('Trying the loop')
  await expect(log.getByText(/the pump is well again by Fill site/)).toHaveCount(2)

  // Taken back, it is out at once.
  await lead.getByRole('button', { name: 'Take back what R. Moss was let in to' }).click()
  await expect(seat.getByText('This device sits at no seat')).toBeVisible()
  // By mistake: let in again, it needs no new code.
  await lead.getByRole('status').getByRole('button', { name: 'Undo' }).click()
  await expect(lead.getByText('R. Moss is let in again.')).toBeVisible()
  await seat.getByRole('button', { name: 'Try again' }).click()
  await expect(heard.getByRole('listitem')).toHaveCount(5)
  expect(thrown).toEqual([])
})
