import path from 'node:path'
import { zipBytes } from '../tests/unit/worker/elevation/write-zip'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'
import { tiffBytes } from '../tests/unit/worker/elevation/write-tiff'

const ELEVATION = path.resolve(import.meta.dirname, '../public/demo/ostrel-valley-elevation.tif')
const SURVEY = '/district/ostrel-valley/survey'

test('elevation comes in from a GeoTIFF, is kept, can be rated by its maker’s word, and goes out again by undo', async ({ page }) => {
  await page.goto(SURVEY)
  await page.getByRole('button', { name: /^Elevation/ }).click()
  await page.getByLabel('Choose elevation files').setInputFiles(ELEVATION)
  await expect(page.getByText(/ostrel-valley-elevation\.tif is in: ground from 62\d\sft to 1,53\d\sft, a height every 12\d\sft, 100% of the district/)).toBeVisible({ timeout: 30_000 })
  await expect(page.getByText(/does not say in which unit/)).toBeHidden()
  await expectAccessible(page)
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect(page.getByRole('button', { name: /^Elevation ostrel-valley-elevation/ })).toBeVisible()
  await page.getByRole('button', { name: 'Redo' }).click()
  const doubt = page.getByRole('textbox', { name: 'Heights are good to' })
  await doubt.fill('3 ft')
  await doubt.press('Enter')
  await page.reload()
  await page.getByRole('button', { name: /^Elevation/ }).click()
  await expect(page.getByRole('textbox', { name: 'Heights are good to' })).toHaveValue(/^3/)
  await expect(page.getByText(/From ostrel-valley-elevation\.tif, imported/)).toBeVisible()
  await expectAccessible(page)
})

test('a packed tile is opened here, and one without elevation is refused in one sentence', async ({ page }) => {
  await page.goto(SURVEY)
  await page.getByRole('button', { name: /^Elevation/ }).click()
  const files = page.getByLabel('Choose elevation files')
  const zip = (buffer: Uint8Array, name: string) => files.setInputFiles({ name, mimeType: 'application/zip', buffer: Buffer.from(buffer) })
  await zip(zipBytes({ 'holiday/photo.jpg': new Uint8Array(64) }), 'photos.zip')
  await expect(page.getByText('photos.zip holds no elevation: there is neither a .hgt tile nor a GeoTIFF in it.')).toBeVisible({ timeout: 30_000 })
  await zip(zipBytes({ 'N43W042.hgt': Buffer.alloc(1201 * 1201 * 2) }), 'N43W042.hgt.zip')
  await expect(page.getByText(/N43W042\.hgt\.zip is in: ground from 0\sft to 0\sft/)).toBeVisible({ timeout: 30_000 })
})

test('a picture, a projection that is not read and a file of another place are refused in one sentence', async ({ page }) => {
  await page.goto(SURVEY)
  await page.getByRole('button', { name: /^Elevation/ }).click()
  const files = page.getByLabel('Choose elevation files')
  await files.setInputFiles({ name: 'photo.tif', mimeType: 'image/tiff', buffer: Buffer.from([0x89, 0x50, 0x4e, 0x47]) })
  await expect(page.getByText(/photo\.tif is not an elevation file this app reads \(it is a picture\)/)).toBeVisible({ timeout: 30_000 })
  // A state grid in feet (EPSG 2263): a projection that is not read.
  const plane = tiffBytes({ columns: 40, rows: 40, value: () => 100, scale: [100, 100], tie: [0, 0, 0, 980_000, 200_000, 0], keys: [[1024, 1], [3072, 2263]] })
  await files.setInputFiles({ name: 'plane.tif', mimeType: 'image/tiff', buffer: Buffer.from(plane) })
  await expect(page.getByText(/EPSG:2263/)).toBeVisible({ timeout: 30_000 })
  const tile = Buffer.alloc(1201 * 1201 * 2)
  await files.setInputFiles({ name: 'N49E011.hgt', mimeType: 'application/octet-stream', buffer: tile })
  await expect(page.getByText(/The elevation lies elsewhere: it covers latitudes 49\.000 to 50\.000/)).toBeVisible({ timeout: 30_000 })
})
