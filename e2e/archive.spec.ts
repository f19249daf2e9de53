import { readFileSync } from 'node:fs'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

test.use({ expectedErrors: [/status of (409|422)/] })

test('a district is saved in one file, told from one already here, opened as a copy, and refused when damaged', async ({ page }, info) => {
  await page.goto('/')
  const saving = page.waitForEvent('download')
  await page.getByRole('link', { name: 'Save an archive of Ostrel Valley (invented)' }).click()
  const download = await saving
  expect(download.suggestedFilename()).toMatch(/^Ostrel Valley \(invented\) \d{4}-\d\d-\d\d\.millrace\.zip$/)
  const file = info.outputPath('valley.millrace.zip')
  await download.saveAs(file)

  const chooser = page.getByLabel('Open an archive')
  await chooser.setInputFiles(file)
  await expect(page.getByText('is already here, exactly as in this archive')).toBeVisible()

  await page.request.post('/api/documents/ostrel-valley/edits', {
    data: { edits: [{ id: 'edit-after-archive', docId: 'ostrel-valley', base: 0, by: '', at: '2026-01-01T00:00:00Z', body: { kind: 'setFields', set: { notes: 'changed since' } } }] },
  })
  await chooser.setInputFiles(file)
  await expect(page.getByText('already here at another state')).toBeVisible()
  await page.getByRole('button', { name: 'Open as a copy' }).click()
  await expect(page.getByRole('status').getByText(/\(copy\) is here as a copy, with \d+ plans\./)).toBeVisible()
  await expect(page.getByRole('heading', { name: 'Ostrel Valley (invented) (copy)' })).toBeVisible()
  await expectAccessible(page)

  const damaged = readFileSync(file)
  damaged[5000]! ^= 0xff
  await chooser.setInputFiles({ name: 'damaged.millrace.zip', mimeType: 'application/zip', buffer: damaged })
  await expect(page.getByText(/^The part .+ of the archive is damaged/)).toBeVisible()
  await page.getByLabel('Open an archive').setInputFiles({ name: 'notes.zip', mimeType: 'application/zip', buffer: Buffer.from('no zip') })
  await expect(page.getByText('This file is not a zip file, or it is cut short.')).toBeVisible()
})
