import path from 'node:path'
import type { Page } from '@playwright/test'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

test.use({ database: 'empty' })

const MAP_FILE = path.resolve(import.meta.dirname, '../tests/data/north-bayreuth.osm.pbf')

/** Begins a district by its name; it opens at its survey. */
async function beginDistrict(page: Page, name: string): Promise<void> {
  await page.goto('/')
  await page.getByLabel('Name of the district').fill(name)
  await page.getByRole('button', { name: 'Start the district' }).click()
  await page.waitForURL(/\/survey$/)
  await expect(page.getByRole('heading', { name: 'Sources' })).toBeVisible()
}

const mapOf = (page: Page) => page.getByRole('region', { name: 'Map of the district' })
const columnOf = (page: Page) => page.getByRole('region', { name: 'Places of the district' })

async function place(page: Page, what: string, x: number, y: number): Promise<void> {
  await columnOf(page).getByRole('button', { name: `Place a ${what}`, exact: true }).click()
  await mapOf(page).click({ position: { x, y } })
}

/** Fills a field and commits it. */
async function enter(page: Page, label: string, text: string): Promise<void> {
  const field = columnOf(page).getByLabel(label, { exact: true })
  await field.fill(text)
  await field.press('Enter')
}

/** The symbol of a place on the map. */
const symbol = (page: Page, name: string) => mapOf(page).getByRole('button', { name: new RegExp(`^${name},`) })

test('roads come in from a map file, with what came and whose data it is, and go out again by undo', async ({ page }) => {
  await beginDistrict(page, 'Import township')
  await expect(page.getByRole('heading', { name: 'Bring in the roads of your district' })).toBeVisible()
  await expectAccessible(page)
  await page.getByLabel('Choose a map file').setInputFiles(MAP_FILE)
  await expect(page.getByText('north-bayreuth.osm.pbf is in. This is what came:')).toBeVisible({ timeout: 30_000 })
  await expect(page.getByText('bridges', { exact: true })).toBeVisible()
  await expectAccessible(page)
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await expect(page.getByText('Map data: © OpenStreetMap contributors')).toBeVisible()
  await page.reload()
  await expect(page.getByText('Map data: © OpenStreetMap contributors')).toBeVisible()
  await expect(page.getByRole('button', { name: /^Roads and map/ })).toBeVisible()
})

test('an import is one step of undo, and keeps road notes', async ({ page }) => {
  await beginDistrict(page, 'Undo township')
  await place(page, 'road note', 300, 300)
  await page.getByLabel('Choose a map file').setInputFiles(MAP_FILE)
  await page.getByRole('button', { name: 'Done', exact: true }).click({ timeout: 30_000 })
  await expect(symbol(page, 'Road note 1')).toBeVisible()
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect(page.getByRole('heading', { name: 'Bring in the roads of your district' })).toBeVisible()
  await expect(symbol(page, 'Road note 1')).toBeVisible()
})

test('a file that is no map data, or is cut off, is refused in a sentence and changes nothing', async ({ page }) => {
  await beginDistrict(page, 'Refusal township')
  const input = page.getByLabel('Choose a map file')
  await input.setInputFiles({ name: 'letter.osm', mimeType: 'text/plain', buffer: Buffer.from('Dear county,\n') })
  await expect(columnOf(page).getByRole('alert')).toContainText('not OpenStreetMap data')
  await input.setInputFiles({ name: 'empty.osm', mimeType: 'text/xml', buffer: Buffer.from('<osm version="0.6"></osm>') })
  await expect(columnOf(page).getByRole('alert')).toContainText('holds no roads')
  await input.setInputFiles({ name: 'cut.osm', mimeType: 'text/xml', buffer: Buffer.from('<osm version="0.6"><node id="1" lat="45" lon="-73"/><way id="1"><nd') })
  await expect(columnOf(page).getByRole('alert')).toContainText(/ends too early|damaged/)
  await expect(page.getByRole('heading', { name: 'Bring in the roads of your district' })).toBeVisible()
  await expect(page.getByText('Map data:')).toHaveCount(0)
})

test('ponds and tagged points of the map are picked together, added to check, and go out again by undo', async ({ page }) => {
  await beginDistrict(page, 'Check township')
  await page.getByLabel('Choose a map file').setInputFiles(MAP_FILE)
  await page.getByRole('button', { name: 'See the places with water' }).click({ timeout: 30_000 })
  await expect(page.getByRole('button', { name: /^Water on the map \d+ ponds and lakes, \d+ tagged water points on the map: add as sources to check/ })).toBeVisible({ timeout: 30_000 })
  const list = page.getByRole('list', { name: 'Water on the map' })
  await expect(list.getByRole('checkbox').first()).toBeVisible()
  await columnOf(page).getByLabel('Kind', { exact: true }).selectOption({ label: await page.locator('option', { hasText: /^Ponds and lakes/ }).innerText() })
  await columnOf(page).getByLabel('At least').selectOption('1')
  await columnOf(page).getByLabel('First', { exact: true }).selectOption('Largest')
  await expect(list.getByText(/\d\s?(ft|mi) to a road/).first()).toBeVisible()
  await expectAccessible(page)
  await list.getByRole('checkbox').nth(0).check()
  await list.getByRole('checkbox').nth(1).check()
  await page.getByRole('button', { name: 'Add 2 as sources to check' }).click()
  await expect(page.getByText('2 sources are in the survey, marked to check.')).toBeVisible()
  await expect(columnOf(page).getByRole('button', { name: /to check on the spot/ })).toHaveCount(2)
  await columnOf(page).getByRole('button', { name: /to check on the spot/ }).first().click()
  await expect(columnOf(page).getByText(/^OpenStreetMap object \d+/)).toBeVisible()
  await expect(page.getByRole('button', { name: /^Place: assumed/ })).toBeVisible()
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click()
  await expect(columnOf(page).getByRole('button', { name: /to check on the spot/ })).toHaveCount(0)
})

test('a pond is placed, measured, moved by keyboard, deleted and brought back', async ({ page }) => {
  await beginDistrict(page, 'Pond township')
  await place(page, 'source', 400, 300)
  await enter(page, 'Name', 'Mill pond')
  await enter(page, 'Surface area', 'wide')
  await expect(columnOf(page).getByRole('alert')).toBeVisible()
  await enter(page, 'Surface area', '1 acre')
  await enter(page, 'Usable depth', '1 ft')
  // An acre-foot is 325,851 gal: 43,560 sq ft by the definition of the acre, 231 cubic inches to the gallon (NIST Handbook 44, appendix C).
  await expect(columnOf(page).getByText(/about 326,000\sgal/).first()).toBeVisible()
  await expectAccessible(page)
  const pin = symbol(page, 'Mill pond')
  const before = await pin.boundingBox()
  await pin.press('ArrowRight')
  await pin.press('Shift+ArrowRight')
  await expect.poll(async () => ((await pin.boundingBox())?.x ?? 0) - (before?.x ?? 0)).toBeGreaterThan(30)
  await columnOf(page).getByLabel('Name', { exact: true }).focus()
  await page.getByRole('button', { name: 'Delete Mill pond' }).press('Enter')
  await expect(pin).toHaveCount(0)
  // The button that had the keyboard is gone with its card: it goes on beside it, not at the top of the page.
  await expect(columnOf(page).getByRole('button', { name: 'Place a source' })).toBeFocused()
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click()
  await expect(pin).toBeVisible()
  await page.keyboard.press('Control+z')
  await page.reload()
  await expect(symbol(page, 'Mill pond')).toBeVisible()
})

test('a place is put down by keyboard alone, in the middle of the map', async ({ page }) => {
  await beginDistrict(page, 'Keyboard township')
  await columnOf(page).getByRole('button', { name: 'Place a station' }).focus()
  await page.keyboard.press('Enter')
  await mapOf(page).focus()
  await page.keyboard.press('Enter')
  await expect(symbol(page, 'Station 1')).toBeVisible()
  await expect(columnOf(page).getByLabel('Name', { exact: true })).toHaveValue('Station 1')
})

test('a tap on a place while placing puts the new one there', async ({ page }) => {
  await beginDistrict(page, 'Stacked township')
  await place(page, 'source', 400, 300)
  await symbol(page, 'Source 1').hover()
  await columnOf(page).getByRole('button', { name: 'Place a target hazard', exact: true }).click()
  await symbol(page, 'Source 1').click()
  await expect(symbol(page, 'Target hazard 1')).toBeVisible()
  await expect(columnOf(page).getByLabel('Name', { exact: true })).toHaveValue('Target hazard 1')
})

test('a hydrant shows what its flow test promises at 20 psi', async ({ page }) => {
  await beginDistrict(page, 'Hydrant township')
  await place(page, 'source', 400, 300)
  await columnOf(page).getByLabel('Kind of source').selectOption('Pressure hydrant')
  await expect(columnOf(page).getByLabel('Usable depth')).toHaveCount(0)
  await enter(page, 'Static pressure', '80')
  await enter(page, 'Residual pressure', '60')
  await enter(page, 'Flow in the test', '1000')
  // 1,000 × ((80 − 20) / (80 − 60))^0.54 = 1,000 × 3^0.54 = 1,809.8 gpm, the form of NFPA 291 (from memory).
  await expect(columnOf(page).getByText('1,800 gpm', { exact: true })).toBeVisible()
})

test('a hazard shows every method side by side, and is held to the one chosen', async ({ page }) => {
  await beginDistrict(page, 'Hazard township')
  await place(page, 'target hazard', 400, 300)
  await expect(columnOf(page).getByText(/to see the flow by every method/)).toBeVisible()
  for (const [label, text] of [['Length', '60'], ['Width', '40'], ['Story height', '9']] as const) await enter(page, label, text)
  await columnOf(page).getByLabel('Occupancy class').selectOption('7, light')
  await columnOf(page).getByLabel('Construction').selectOption('Type V, wood frame')
  const methods = page.getByRole('radiogroup', { name: 'Plans are held to' })
  // National Fire Academy rule: 60 × 40 / 3 = 800 gpm for one fully involved floor (published course rule, from memory).
  await expect(methods.locator('label', { hasText: 'National Fire Academy rule' }).last()).toContainText('800 gpm')
  await methods.getByRole('radio', { name: /^Iowa rule/ }).check()
  // Iowa rule: volume / 100: 60 × 40 × 9 / 100 = 216 gpm (published rate-of-flow formula, from memory).
  await expect(columnOf(page).getByText('Plans are held to 216 gpm.')).toBeVisible()
  await expectAccessible(page)
  await enter(page, 'The officer’s figure', '1000')
  await methods.getByRole('radio', { name: /^The officer’s figure/ }).check()
  await expect(columnOf(page).getByText('Plans are held to 1,000 gpm.')).toBeVisible()
})

test('a draft site takes its lift from elevations until it is measured, and the address leads to it', async ({ page }) => {
  await beginDistrict(page, 'Bank township')
  await place(page, 'source', 400, 300)
  await enter(page, 'Water surface elevation', '500')
  await columnOf(page).getByRole('button', { name: 'Place a draft site on it' }).click()
  await mapOf(page).click({ position: { x: 600, y: 450 } })
  await enter(page, 'Bank elevation', '508')
  await enter(page, 'Intake above ground', '3')
  await expect(columnOf(page).getByText('on Source 1 · lift 11 ft')).toBeVisible()
  await enter(page, 'Lift', '12')
  await expect(columnOf(page).getByText('on Source 1 · lift 12 ft')).toBeVisible()
  const address = page.url()
  expect(address).toContain('?item=')
  await page.goto('about:blank')
  await page.goto(address)
  await expect(columnOf(page).getByLabel('Lift', { exact: true })).toHaveValue(/12/)
  await expect(symbol(page, 'Draft site 1')).toHaveAttribute('aria-pressed', 'true')
})

test('the search narrows list and map alike', async ({ page }) => {
  await beginDistrict(page, 'Search township')
  await place(page, 'source', 300, 300)
  await place(page, 'station', 500, 300)
  const station = await symbol(page, 'Station 1').elementHandle()
  await page.getByLabel('Search the survey').fill('station')
  await expect(symbol(page, 'Station 1')).toBeVisible()
  await expect(columnOf(page).getByRole('button', { name: /^Source 1/ })).toHaveCount(0)
  await expect(symbol(page, 'Source 1')).toHaveCount(0)
  await page.getByLabel('Search the survey').press('Escape')
  await expect(symbol(page, 'Source 1')).toBeVisible()
  // What is found before and after is the same symbol: only those that come and go are made.
  expect(await station?.evaluate((element) => element.isConnected)).toBe(true)
})

test('on a phone the map is on top, and nothing is cut off at the side', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await beginDistrict(page, 'Pocket township')
  await columnOf(page).getByRole('button', { name: 'Place a source' }).click()
  await expect(mapOf(page)).toBeInViewport()
  await mapOf(page).click({ position: { x: 150, y: 150 } })
  await expect(columnOf(page).getByLabel('Name', { exact: true })).toHaveValue('Source 1')
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  await expectAccessible(page)
})

test('the address of a district leads to its plans', async ({ page }) => {
  await beginDistrict(page, 'Address township')
  await page.goto(page.url().replace(/\/survey.*/, ''))
  await expect(page).toHaveURL(/\/plan$/)
})
