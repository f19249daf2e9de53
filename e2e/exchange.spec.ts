import { readFileSync } from 'node:fs'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

test.use({ database: 'empty' })

const TABLE = [
  'Site,Type,Latitude,Longitude,Volume (gal),Last test',
  'Quarry pond,pond,44.0512,-73.2041,"250,000",2025-06-30',
  'Bad depth,pond,44.0522,-73.2051,plenty,',
  'Church cistern,cistern,44.0532,-73.2061,12000,',
  'Off the earth,pond,94.05,-73.2,1000,',
].join('\r\n')

test('a table comes in but for the rows it names, goes out again by undo, and what is here is taken out as GeoJSON', async ({ page }) => {
  await page.goto('/')
  await page.getByLabel('Name of the district').fill('Exchange township')
  await page.getByRole('button', { name: 'Start the district' }).click()
  await page.waitForURL(/\/survey$/)
  await page.getByRole('link', { name: 'Bring in places from a file, or take them out' }).click()
  await expect(page.getByRole('heading', { name: 'Bring in and take out places' })).toBeVisible()
  await expectAccessible(page)

  const choose = page.getByLabel('Choose a file')
  await choose.setInputFiles({ name: 'letter.kml', mimeType: 'text/xml', buffer: Buffer.from('<?xml version="1.0"?><kml><Placemark></kml>') })
  await expect(page.getByRole('alert').filter({ hasText: 'letter.kml' })).toContainText('damaged in line 1')
  await choose.setInputFiles({ name: 'county.csv', mimeType: 'text/csv', buffer: Buffer.from(TABLE) })
  await expect(page.getByText('county.csv holds 4 rows.')).toBeVisible()
  await expect(page.getByLabel('Volume (gal) becomes')).toHaveValue('usable_gal')
  const bad = page.getByRole('list', { name: '2 rows are not taken' })
  await expect(bad.getByRole('listitem')).toHaveText([
    'Row 3 (Bad depth), column Volume (gal): “plenty” is not a number.',
    /^Row 5 \(Off the earth\), column Latitude: “94\.05”: a latitude lies between/,
  ])
  await expectAccessible(page)
  await page.getByRole('button', { name: 'Take in 2 places' }).click()
  await expect(page.getByText('2 places added.')).toBeVisible()
  await expect(page.getByLabel('Sources (2)')).toBeChecked()

  // The same file again: what is here already is left alone.
  await choose.setInputFiles({ name: 'county.csv', mimeType: 'text/csv', buffer: Buffer.from(TABLE) })
  await expect(page.getByRole('cell', { name: /Quarry pond, same name/ })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Take in', exact: true })).toBeDisabled()
  await page.getByRole('button', { name: 'Cancel' }).click()

  const saving = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save a file with 2 places' }).click()
  const saved = await saving
  expect(saved.suggestedFilename()).toBe('Exchange township, places.geojson')
  const { features } = JSON.parse(readFileSync(await saved.path(), 'utf8')) as { features: { properties: Record<string, unknown>; geometry: unknown }[] }
  expect(features.map(({ geometry, properties: { name, kind, usable_gal, testedOn } }) => ({ geometry, name, kind, usable_gal, testedOn }))).toEqual([
    { geometry: { type: 'Point', coordinates: [-73.2041, 44.0512] }, name: 'Quarry pond', kind: 'pond', usable_gal: 250_000, testedOn: '2025-06-30' },
    { geometry: { type: 'Point', coordinates: [-73.2061, 44.0532] }, name: 'Church cistern', kind: 'cistern', usable_gal: 12_000, testedOn: undefined },
  ])

  await page.getByRole('button', { name: 'Undo', exact: true }).first().click()
  await expect(page.getByLabel('Sources (0)')).toBeVisible()
})
