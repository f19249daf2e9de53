import { demoBundle } from '../tests/fixtures/demo-roads'
import { loggedDrill } from '../tests/fixtures/logged-drill'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

const LOG = 'review-journey-log'

test('a log is reviewed: causes add up, one measured time goes into the district and back, and all reviews stand together', async ({ page }) => {
  const { log, events } = loggedDrill(demoBundle('gander-hill'), { id: LOG, name: 'Drill of the review journey', seed: 7, roadFactor: 1.3, dropShare: 0.08, clock_s: 240, isOneMissing: true })
  expect((await page.request.post('/api/documents', { data: { doc: log } })).ok()).toBe(true)
  for (let k = 0; k < events.length; k += 100) expect((await page.request.post(`/api/documents/${LOG}/events`, { data: { events: events.slice(k, k + 100) } })).ok()).toBe(true)

  await page.goto(`/district/ostrel-valley/log/${LOG}/review`)
  await expect(page.getByRole('heading', { name: 'After-action review: Drill of the review journey' })).toBeVisible({ timeout: 30_000 })
  const causes = page.getByRole('table', { name: 'Why it differs from the plan' })
  const shown = (await causes.getByRole('row').allTextContents()).slice(1).map((row) => Number(/([+−-]?[\d,]+)$/.exec(row)![1]!.replace('−', '-').replace(',', '')))
  const [planned, ...rest] = shown
  const achieved = rest.pop()
  expect(rest).toHaveLength(10)
  expect(rest.reduce((sum, value) => sum + value, planned!)).toBe(achieved)
  await expect(page.getByText(/An estimate from a log, not a rating/)).toBeVisible()
  await expect(page.getByText(/What this review took for granted/)).toBeVisible()
  await expectAccessible(page)

  const take = page.getByRole('button', { name: /^Take: .*Time to take the dump position/ }).first()
  const name = (await take.getAttribute('aria-label'))!
  await take.click()
  await expect(page.getByText('Saved', { exact: true })).toBeVisible()
  await expect(page.getByRole('button', { name, exact: true })).toHaveCount(0)
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click()
  await expect(page.getByRole('button', { name, exact: true })).toBeVisible()
  await page.getByRole('button', { name: /^Take all \d+$/ }).click()
  await expect(page.getByText(/\d+ figures taken, measured/)).toBeVisible()
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click()
  await expect(page.getByRole('button', { name, exact: true })).toBeVisible()

  await page.getByRole('link', { name: 'Reviews' }).click()
  await expect(page.getByRole('link', { name: 'Drill of the review journey' })).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText(/From 5 on a picture stands here/)).toBeVisible()
  await expectAccessible(page)
})
