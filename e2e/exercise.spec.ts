import type { Page } from '@playwright/test'
import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

const EXERCISES = '/district/ostrel-valley/exercise'

async function make(page: Page, hardness: string): Promise<void> {
  await page.goto(EXERCISES)
  await page.getByLabel('Plan it is played on').selectOption({ label: 'Gander Hill farmhouse from the boat launch' })
  await page.getByRole('radio', { name: hardness }).check({ force: true, timeout: 30_000 })
  await page.getByRole('button', { name: 'Make the exercise' }).click()
  await page.waitForURL(/\/exercise\/[\w-]+$/)
}

/** Sets the clock as another screen would, and takes the exercise up there. */
async function setClock(page: Page, minute: number): Promise<void> {
  await expect(page.getByText('Saved', { exact: true })).toBeVisible()
  const id = new URL(page.url()).pathname.split('/').at(-1)!
  const { sequence } = (await (await page.request.get(`/api/documents/${id}`)).json()) as { sequence: number }
  const body = { kind: 'setFields', set: { clock: { at_s: minute * 60, isRunning: false, speedFactor: 60, setAt: new Date().toISOString() } } }
  const edit = { id: `set-clock-${minute}-${id.slice(0, 12)}`, docId: id, base: sequence, by: 'another screen', at: new Date().toISOString(), body }
  const answer = await page.request.post(`/api/documents/${id}/edits`, { data: { edits: [edit] } })
  expect(answer.status()).toBe(200)
  await page.reload()
  await expect(page.getByRole('timer')).toHaveText(`${minute}:00`)
}

test('an exercise is made of a plan, led against the clock, decided in, and gone through', async ({ page }) => {
  // What could have been decided is tried one after the other.
  test.slow()
  await make(page, 'Only what I add')
  await expect(page.getByRole('timer')).toHaveText('0:00')
  await expectAccessible(page)
  await page.getByLabel('60×').check({ force: true })
  await page.getByRole('button', { name: 'Start the clock' }).click()
  await expect(page.getByRole('timer')).toHaveText(/^[6-9]:/, { timeout: 30_000 })
  await page.getByRole('button', { name: 'Pause' }).click()
  await expect(page.getByText(/on the way to/).first()).toBeVisible()
  await setClock(page, 18)
  await expect(page.getByText('asked for 500 gpm')).toBeVisible()

  await page.getByLabel('Add a trouble').selectOption({ label: 'Fill pumper shuts down: Engine 11, Boat launch' })
  await page.getByRole('button', { name: 'Add a trouble' }).click()
  await page.getByRole('button', { name: /^Edit: Fill pumper/ }).click()
  const editor = page.getByRole('group', { name: /^Edit: Fill pumper/ })
  await editor.getByLabel('Words to read out').fill('Engine 11, our pump is down.')
  await editor.getByLabel('Words to read out').press('Tab')
  await editor.getByRole('button', { name: 'Keep it' }).click()
  await page.getByRole('button', { name: /^Let it come now: Fill pumper/ }).click()
  const log = page.locator('section', { has: page.getByRole('heading', { name: /What came about/ }) })
  await expect(log).toContainText('Fill pumper shuts down')
  await expect(log).toContainText('our pump is down')
  await expect(log.getByRole('link', { name: 'Play the prime drill for it' })).toHaveAttribute('href', /exercise=/)
  await setClock(page, 36)
  await expect(page.getByText(/short by/)).toBeVisible()

  await page.getByLabel('Who decides').fill('Water supply officer')
  await page.getByLabel('What', { exact: true }).selectOption({ label: 'Set a fill site’s pump right' })
  await page.getByLabel('Where', { exact: true }).selectOption({ label: 'Boat launch' })
  await page.getByRole('button', { name: 'Do it' }).click()
  await expect(log).toContainText('Boat launch: the pump is well again by Water supply officer')
  await setClock(page, 55)
  await expect(page.getByText(/short by/)).toHaveCount(0)

  await page.getByLabel('What', { exact: true }).selectOption({ label: 'Open or close bays or dump positions' })
  await page.getByLabel('Where', { exact: true }).selectOption({ label: 'Boat launch' })
  await page.getByLabel('Bays from now on').fill('3')
  await page.getByLabel('Bays from now on').press('Enter')
  await page.getByRole('button', { name: 'Do it' }).click()
  await expect(log).toContainText('Boat launch: 3 bays from now on')

  await page.getByRole('button', { name: 'End the exercise' }).click()
  await page.getByRole('button', { name: 'End it now' }).click()
  await expect(page.getByText(/^Ended at/)).toBeVisible()
  await page.getByRole('link', { name: 'Go through it' }).click()
  const effects = page.getByRole('table', { name: 'What each did to the water' })
  await expect(effects.getByRole('row', { name: /Fill pumper shuts down/ })).toContainText(/gal/)
  await expect(effects.getByRole('row', { name: /well again/ })).toContainText(/gal less/)
  const answers = page.getByRole('table', { name: /^Answers to Fill pumper shuts down/ })
  await expect(answers.getByRole('row', { name: /^As decided/ })).toBeVisible({ timeout: 90_000 })
  await expectAccessible(page)
})

test('a seat sees what its place would know, and follows who leads, over a reload', async ({ page, context }) => {
  await make(page, 'Only what I add')
  await setClock(page, 14)
  const stands = await page.getByRole('timer').innerText()
  const attack = await context.newPage()
  await attack.goto(`${page.url()}?seat=attack`)
  await expect(attack.getByRole('timer')).toHaveText(stands)
  await expect(attack.getByText('Water on the fire')).toBeVisible()
  await expect(attack.getByRole('heading', { name: /Troubles to come/ })).toHaveCount(0)
  await expect(attack.getByRole('button', { name: 'Pause' })).toHaveCount(0)
  await expect(attack.getByRole('table', { name: 'Tenders' })).toHaveCount(0)

  await attack.getByLabel('What', { exact: true }).selectOption({ label: 'Ask for another flow' })
  await attack.getByLabel('Flow', { exact: true }).fill('300')
  await attack.getByLabel('Flow', { exact: true }).press('Enter')
  await attack.getByRole('button', { name: 'Do it' }).click()
  await expect(attack.getByText('asked for 300 gpm')).toBeVisible()
  await expect(page.getByText('asked for 300 gpm')).toBeVisible({ timeout: 20_000 })
  await attack.reload()
  await expect(attack.getByText('asked for 300 gpm')).toBeVisible()
})

test('the space bar starts and stops the clock, and everything is reached on a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await make(page, 'Easy')
  await expect(page.getByRole('button', { name: 'Start the clock' })).toBeVisible()
  await page.locator('main').focus()
  await page.keyboard.press(' ')
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible()
  await page.keyboard.press(' ')
  await expect(page.getByRole('button', { name: 'Go on' })).toBeVisible()
  expect(await page.evaluate(() => document.scrollingElement!.scrollWidth)).toBeLessThanOrEqual(390)
  await expectAccessible(page)
})
