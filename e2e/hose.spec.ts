import type { Page } from '@playwright/test'
import { expectAccessible, expectAccessibleInEveryLook, expectNoSideways } from './support/expect-accessible'
import { expect, test } from './support/test'

const HOSE = '/district/ostrel-valley/plan/plan-school/hose'
/** The way to its fire ground takes more hose than the district has. */
const FAR_HOSE = '/district/ostrel-valley/plan/plan-yarrow-bank/hose'

/** Opens the page and draws a lay, the only one of the plan. */
async function drawLay(page: Page, address = HOSE) {
  await page.goto(address)
  const empty = page.getByText('No hose lay yet')
  const remove = page.getByRole('button', { name: /^Delete Hose lay/ })
  await expect(remove.or(empty)).toBeVisible()
  if (await remove.isVisible()) await remove.click()
  await expect(empty).toBeVisible()
  await page.getByRole('button', { name: 'Add a hose lay' }).click()
  await expect(page.getByRole('region', { name: 'What it carries' })).toBeVisible({ timeout: 30_000 })
}

for (const [width, height] of [[1440, 900], [390, 844]] as const) {
  test.describe(`${width} wide`, () => {
    test.use({ viewport: { width, height } })

    test('a lay is drawn, gets its pumpers and hose, and says flow, pressures, orders and its part in the plan', async ({ page }) => {
      await drawLay(page)
      await page.getByRole('combobox', { name: 'At the source' }).selectOption({ label: 'Engine 71' })
      await page.getByRole('combobox', { name: 'One more pumper' }).selectOption({ label: 'Engine 22' })
      await expect(page.getByRole('combobox', { name: 'In the relay, 2' })).toHaveValue('engine-22')
      const size = page.getByRole('textbox', { name: /^Size/ }).first()
      await size.fill('5 in')
      await size.press('Enter')
      const table = page.getByRole('table', { name: 'Pumpers along the lay' })
      await expect(table.getByRole('rowheader').or(table.getByRole('cell')).filter({ hasText: 'Engine 71' }).first()).toBeVisible({ timeout: 30_000 })
      await expect(page.getByRole('img', { name: /^Pressure from \d+\spsi at the source pumper/ })).toBeVisible()
      await expect(page.getByRole('img', { name: /^The ground rises/ })).toBeVisible()
      await expect(page.getByRole('region', { name: 'To start' }).getByRole('listitem').first()).toHaveText(/Lay the hose/)
      const part = page.getByRole('region', { name: 'In the plan' })
      await expect(part.getByText('Brings')).toBeVisible({ timeout: 30_000 })
      await expect(part.getByText('Stands at its flow')).toBeVisible()
      await expectNoSideways(page)
      await expectAccessible(page)
    })
  })
}

test('a lay left out leaves the plan’s flow, and the keyboard alone does it', async ({ page }) => {
  await drawLay(page)
  const part = page.getByRole('region', { name: 'In the plan' })
  await expect(part.getByText('Brings')).toBeVisible({ timeout: 30_000 })
  const box = page.getByRole('checkbox', { name: /Leave it out of the plan’s flow/ })
  await box.focus()
  await page.keyboard.press('Space')
  await expect(part.getByText('It does not count in the plan’s flow.')).toBeVisible({ timeout: 30_000 })
  await page.getByRole('button', { name: 'Undo', exact: true }).press('Enter')
  await expect(part.getByText('Brings')).toBeVisible({ timeout: 30_000 })
})

test('a lay whose hose the district has not got brings nothing, and the plan’s headline says what is missing', async ({ page }) => {
  await drawLay(page, FAR_HOSE)
  const missing = /Hose lay 1 cannot be laid and brings nothing: it needs [\d,]+\sft of 5\sin hose; the district lists 2,000\sft\./
  await expect(page.getByRole('list', { name: 'To look at' }).getByText(missing)).toBeVisible()
  await expect(page.getByRole('region', { name: 'In the plan' }).getByText('It does not count in the plan’s flow.')).toBeVisible({ timeout: 30_000 })
  // In the list, and in the plan's headline.
  await expect(page.getByText(missing)).toHaveCount(2, { timeout: 30_000 })
  await page.getByRole('button', { name: /^Delete Hose lay/ }).click()
})

test('hose or wheels: compared from the district’s equipment, with the distance at which both are even', async ({ page }) => {
  await page.goto(FAR_HOSE)
  const wheels = page.getByRole('region', { name: 'Hose or wheels' })
  await wheels.getByRole('button', { name: 'Compare', exact: true }).click()
  await expect(wheels.getByRole('table', { name: /^The best of each/ })).toBeVisible({ timeout: 90_000 })
  await expect(wheels.getByRole('cell', { name: 'Tenders all the way' }).or(wheels.getByRole('rowheader', { name: 'Tenders all the way' }))).toBeVisible()
  await expect(wheels.getByRole('img', { name: /the relay falls from/ })).toBeVisible()
  await expectAccessibleInEveryLook(page)
})

test('a lay that comes later raises the answer from then on, and the plan’s sentence says so', async ({ page }) => {
  await drawLay(page)
  const start = page.getByRole('textbox', { name: 'Laying begins' })
  await start.fill('60 min')
  await start.press('Enter')
  await expect(page.getByText(/From \d+\smin after dispatch, with Hose lay 1, [\d,]+\sgpm expected\./)).toBeVisible({ timeout: 30_000 })
  await expect(page.getByRole('region', { name: 'In the plan' }).getByText('Held once it stands')).toBeVisible()
})

test('hose of two sizes side by side, an appliance, a road crossing, closed or open: each counts, and what one pumper less leaves is told with its pressures', async ({ page }) => {
  await drawLay(page, FAR_HOSE)
  const used = page.getByRole('table', { name: 'Hose needed' })
  await page.getByRole('combobox', { name: 'One more pumper' }).selectOption({ label: 'Engine 71' })
  await page.getByRole('button', { name: 'Add a stretch' }).click()
  const size = page.getByRole('textbox', { name: /^Size/ }).nth(1)
  await size.fill('3 in')
  await size.press('Enter')
  const length = page.getByRole('textbox', { name: /^Length/ }).nth(1)
  await length.fill('300 ft')
  await length.press('Enter')
  const lines = page.getByRole('spinbutton', { name: /^Lines/ }).or(page.getByRole('textbox', { name: /^Lines/ })).nth(1)
  await lines.fill('2')
  await lines.press('Enter')
  await expect(used.getByRole('row', { name: /^3\sin 600\sft/ })).toBeVisible({ timeout: 30_000 })
  await page.getByRole('button', { name: /^Appliances/ }).click()
  await page.getByRole('button', { name: 'Add a wye, siamese or manifold' }).click()
  await page.getByRole('button', { name: /^Road crossings/ }).click()
  await page.getByRole('button', { name: 'Add a crossing' }).click()
  await expect(page.getByText('At road crossings: 1 hose bridge, no ramps.')).toBeVisible({ timeout: 30_000 })
  await page.getByRole('combobox', { name: 'Kind of relay' }).selectOption({ label: 'Open: through portable tanks' })
  const stops = page.getByRole('table', { name: 'Pressures when one pumper stops' })
  await expect(page.getByRole('table', { name: 'Pumpers along the lay' }).getByRole('cell', { name: 'drafts' })).toHaveCount(2, { timeout: 30_000 })
  await page.getByRole('combobox', { name: 'Kind of relay' }).selectOption({ label: 'Closed: hose from pump to pump' })
  await expect(page.getByRole('table', { name: 'Pumpers along the lay' }).getByRole('cell', { name: 'drafts' })).toHaveCount(1, { timeout: 30_000 })
  await expect(stops.getByText('nobody draws the water')).toBeVisible()
  await page.getByRole('button', { name: /^Delete Hose lay/ }).click()
})

test('a point is put on the map and moved by its coordinates; the way lies along the roads when asked', async ({ page }) => {
  await drawLay(page)
  await page.getByRole('button', { name: /^Points of the way/ }).click()
  await page.getByRole('button', { name: 'Add a point halfway' }).click()
  await expect(page.getByRole('button', { name: 'Delete point 2', exact: true })).toBeVisible()
  await page.getByRole('button', { name: 'Lay it along the roads' }).click()
  await expect(page.getByRole('button', { name: 'Delete point 3', exact: true })).toBeVisible({ timeout: 30_000 })
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect(page.getByRole('button', { name: 'Delete point 3', exact: true })).toBeHidden()
})
