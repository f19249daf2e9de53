import { expectAccessible, expectAccessibleInEveryLook } from './support/expect-accessible'
import type { Page } from '@playwright/test'
import { expect, test } from './support/test'

const DEMO_PLAN = '/district/ostrel-valley/plan/plan-yarrow-bank'
/** One that sites are added to: no other journey waits for its answer. */
const TOUCHED_PLAN = '/district/ostrel-valley/plan/plan-school'

// Roads are fetched and weighed before the first answer: on a slow machine that takes its time.
test.describe.configure({ timeout: 150_000 })
const answered = (page: Page) => expect(page.getByText(/Limited by|No single part/)).toBeVisible({ timeout: 60_000 })

/** A new district with nothing in it, led on to its first plan. */
async function beginFirstPlan(page: Page, name: string): Promise<void> {
  await page.goto('/')
  await page.getByLabel('Name of the district').fill(name)
  await page.getByRole('button', { name: 'Start the district' }).click()
  await page.waitForURL(/\/survey/)
  await expect(page.getByRole('heading', { name: 'The way to your first plan' })).toBeVisible()
  await page.getByRole('button', { name: 'Begin the plan' }).click()
  await page.waitForURL(/\/plan\/[^/]+$/)
}

test('a first plan, from an empty district, with four places and two vehicles, in six taps', async ({ page }) => {
  await beginFirstPlan(page, 'Trial district')
  await expect(page.getByText('The plan has no fill site', { exact: false }).first()).toBeAttached()

  const map = page.getByRole('region', { name: 'Map', exact: true })
  const tells = (words: string) => expect(map.getByRole('status').filter({ hasText: words })).toBeVisible()
  await page.getByRole('button', { name: 'Place these 3 on the map' }).click()
  await tells('Choose where tenders fill')
  await map.click({ position: { x: 420, y: 160 } })
  await tells('Choose where tenders dump')
  await map.click({ position: { x: 420, y: 330 } })
  await tells('Choose the fire ground')
  await map.click({ position: { x: 440, y: 390 } })
  await page.getByRole('button', { name: 'Add a handbook pumper and tender' }).click()
  await expect(page.getByText(/expected [\d,]+\sgpm/i).first()).toBeVisible({ timeout: 60_000 })
  await expect(page.getByRole('heading', { name: 'For a first answer' })).toHaveCount(0)
  // It does not end there: what makes it their own, and how it is tried, each a tap away.
  await page.getByRole('button', { name: /^To make it your own/ }).click()
  await expect(page.getByRole('link', { name: /^Log it: drill it with water/ })).toHaveAttribute('href', /\/log\?plan=/)
  await page.getByRole('button', { name: 'Name the portable tank and the pumper at the dump site' }).click()
  await expect(page.getByRole('button', { name: /^Dump site/ }).first()).toBeFocused()
  // What nobody said is said.
  await page.getByRole('button', { name: /^To look at/ }).click()
  const toLookAt = page.getByRole('list', { name: 'To look at' })
  // In the headline, and again in the list.
  for (const words of [/No portable tank is named at Dump site 1: one of 2,000\sgal is assumed/, /No pumper is named at Dump site 1: a 1,000\sgpm pumper is assumed there\./]) {
    await expect(page.getByText(words).first()).toBeAttached()
    await expect(toLookAt.getByText(words)).toBeVisible()
  }

  // Everything done is undone step by step, and done again.
  const undo = page.getByRole('button', { name: 'Undo' })
  await undo.click()
  await expect(page.getByText('No answer yet.')).toBeVisible()
  await page.getByRole('button', { name: 'Redo' }).click()
  await expect(page.getByText(/expected [\d,]+\sgpm/i).first()).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText('Saved', { exact: true })).toBeVisible()
  await page.reload()
  await expect(page.getByText(/expected [\d,]+\sgpm/i).first()).toBeVisible({ timeout: 60_000 })
})

test('a tap on a symbol while placing places there; a draft site’s takes the draft site, and nothing jumps', async ({ page }) => {
  await page.goto(TOUCHED_PLAN)
  await answered(page)
  const map = page.getByRole('region', { name: 'Map', exact: true })
  await page.getByRole('button', { name: /^Dump site/ }).first().click()
  // The nights change the answer above the map; they have come before anything is measured.
  await expect(page.getByText(/Dependable [\d,]+\sgpm/)).toBeVisible({ timeout: 60_000 })
  await page.getByRole('button', { name: 'Place a dump site' }).scrollIntoViewIfNeeded()
  const boxes = async () => [await map.boundingBox(), await page.getByRole('button', { name: /^Dump site/ }).first().boundingBox()]
  const before = await boxes()
  await page.getByRole('button', { name: 'Place a dump site' }).click()
  await expect(map.getByRole('status').filter({ hasText: 'Choose where the dump site stands' })).toBeVisible()
  expect(await boxes()).toEqual(before)
  await map.getByRole('button', { name: /^Cross Hill Road washed out/ }).click()
  await expect(map.getByRole('button', { name: 'Dump site 2, dump site' })).toBeVisible()

  await page.getByRole('button', { name: /^Fill site/ }).first().click()
  await page.getByRole('button', { name: 'Place a fill site' }).click()
  const bank = map.getByRole('button', { name: 'Applegarth loop, draft site' })
  // By key it is the same as by finger, wherever on the map it lies.
  await bank.press('Enter')
  await expect(page.getByText(/^Drafts at Applegarth loop, 0\sft away/)).toBeVisible()
})

test('a fill site away from every draft site asks where its pumper drafts, and takes the answer', async ({ page }) => {
  await page.goto(TOUCHED_PLAN)
  const map = page.getByRole('region', { name: 'Map', exact: true })
  await page.getByRole('button', { name: /^Fill site/ }).first().click()
  await page.getByRole('button', { name: 'Place a fill site' }).click()
  await map.click({ position: { x: 140, y: 120 } })
  await expect(page.getByText('Where does its pumper draft?')).toBeVisible()
  const offer = page.getByRole('button', { name: /^Move it to .* away$/ }).first()
  const name = /^Move it to (.*), /.exec((await offer.textContent()) ?? '')?.[1] ?? ''
  await offer.click()
  await expect(page.getByText(new RegExp(`^Drafts at ${name}, 0\\sft away`)).last()).toBeVisible()
})

test('the map shows every hazard of the survey, the plan’s own marked, and a key to its symbols', async ({ page }) => {
  await page.goto(DEMO_PLAN)
  await answered(page)
  const map = page.getByRole('region', { name: 'Map', exact: true })
  expect(await map.getByRole('button', { name: /, target hazard/ }).count()).toBeGreaterThan(0)
  await expect(map.getByRole('button', { name: /this plan’s hazard/ })).toHaveCount(1)
  await map.getByRole('button', { name: 'Key' }).click()
  await expect(map.getByRole('list', { name: 'What the symbols and lines mean' })).toContainText('target hazard')
  await expectAccessible(page)
})

test('a figure opens its working, and the working ends in what somebody entered', async ({ page }) => {
  await page.goto(DEMO_PLAN)
  await answered(page)
  await expect(page.getByText(/^Short by [\d,]+\sgpm of the 750\sgpm needed/)).toBeVisible()
  await page.getByRole('button', { name: /^Figures/ }).click()
  await page.getByRole('button', { name: /^Hand figure/ }).click()
  const working = page.getByRole('region', { name: 'Working: Hand figure' })
  await expect(working).toContainText('Q = Σ usable / (fill + travel + dump)')
  await expect(working).toContainText('hauled-water form A')
})

test('the string chart unfolds and says in words what it draws', async ({ page }) => {
  await page.goto(DEMO_PLAN)
  await answered(page)
  await page.getByRole('button', { name: 'Show the string chart' }).click()
  await expect(page.getByRole('img', { name: /loads? dumped, .* of its time waiting/ })).toBeVisible()
})

test('a site moves by keyboard, and the answer follows', async ({ page }) => {
  await page.goto(DEMO_PLAN)
  await answered(page)
  const site = page.getByRole('region', { name: 'Map', exact: true }).getByRole('button', { name: /fill site/ }).first()
  await site.focus()
  for (let step = 0; step < 4; step++) await page.keyboard.press('Shift+ArrowUp')
  await page.keyboard.press('Enter')
  // Steps that came one by one, as on a slow machine, go back one by one.
  const undo = page.getByRole('button', { name: 'Undo' })
  await expect(undo).toBeEnabled()
  await expect(async () => {
    if (await undo.isEnabled()) await undo.click()
    await expect(undo).toBeDisabled({ timeout: 300 })
  }).toPass()
  await expect(page.getByText('Saved', { exact: true })).toBeVisible()
})

test('edits of two windows merge where they are apart and are shown where they clash', async ({ page, context }) => {
  const other = await context.newPage()
  for (const window of [page, other]) {
    await window.goto(DEMO_PLAN)
    await window.getByRole('button', { name: /^Fire ground/ }).first().click()
    await expect(window.getByRole('textbox', { name: 'Held for' })).toBeVisible()
  }
  await page.getByRole('textbox', { name: 'Held for' }).fill('90 min')
  await page.getByRole('textbox', { name: 'Held for' }).press('Enter')
  await other.getByRole('textbox', { name: 'Time to the first line' }).fill('3 min')
  await other.getByRole('textbox', { name: 'Time to the first line' }).press('Enter')
  await expect(other.getByRole('textbox', { name: 'Held for' })).toHaveValue(/90|1:30|1 h 30/)
  await expect(page.getByRole('textbox', { name: 'Time to the first line' })).toHaveValue(/3/)
})

test('the planner is accessible by day and by night, on a desk and on a phone, and nothing is cut off at the side', async ({ page }) => {
  await page.goto(DEMO_PLAN)
  await answered(page)
  await page.getByRole('button', { name: /^Fill site/ }).first().click()
  await expectAccessibleInEveryLook(page)
})
