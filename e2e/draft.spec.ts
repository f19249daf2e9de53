import { expectAccessible } from './support/expect-accessible'
import { expect, test } from './support/test'

const site = '/district/ostrel-valley/draft/draft-covered-bridge'

test('a draft site says what a pumper draws there, opens the working of it, and is accessible', async ({ page }) => {
  await page.goto(`${site}?pumper=engine-21`)
  await expect(page.getByRole('heading', { level: 1, name: 'Covered Bridge, north abutment' })).toBeVisible()
  const answer = page.getByRole('region', { name: 'What this pumper draws here' })
  await expect(answer.getByText(/^Engine 21 draws .*\sgpm here at a lift of 19\.9\sft/)).toBeVisible()
  await answer.getByRole('button', { name: /^Flow/ }).click()
  await expect(answer.getByRole('region', { name: 'Working: Flow' })).toContainText('H_air − H_vapor − lift')
  await expect(page.getByRole('img', { name: /flow against lift for Engine 21/ })).toBeVisible()
  await expectAccessible(page)
})

test('a change of pumper, lift and water answers at once, and an impossible lift says by how much', async ({ page }) => {
  await page.goto(`${site}?pumper=engine-21`)
  const answer = page.getByRole('region', { name: 'What this pumper draws here' })
  await page.getByRole('combobox', { name: 'Pumper' }).selectOption('engine-11')
  await expect(answer.getByText(/^Engine 11 draws/)).toBeVisible()
  await page.getByRole('textbox', { name: 'Lift' }).fill('40')
  await page.getByRole('textbox', { name: 'Lift' }).press('Enter')
  await expect(answer.getByText(/gets no water here: a lift of 41\.4\sft \(.*\) is [\d.]+\sft more than it can draw/)).toBeVisible()
  await page.getByRole('button', { name: 'Back to what is known' }).click()
  await expect(answer.getByText(/^Engine 11 draws/)).toBeVisible()
  await page.getByRole('radio', { name: 'Usual season' }).check()
  await expect(answer.getByText(/at a lift of 18\.5\sft/)).toBeVisible()
})

test('from a plan the sheet is for the plan’s pumper, from elsewhere for that of a plan that fills here, and says so', async ({ page }) => {
  const chosen = page.getByRole('combobox', { name: 'Pumper' }).locator('option:checked')
  await page.goto(`${site}?plan=plan-yarrow-bank`)
  await expect(chosen).toContainText('Engine 21')
  await page.goto('/district/ostrel-valley/draft/draft-boat-launch')
  await expect(page.getByText('As the plan “Gander Hill farmhouse from the boat launch” has it.')).toBeVisible()
  await expect(chosen).toContainText('Engine 11')
  await page.goto('/district/ostrel-valley/draft/draft-iron-bridge')
  await expect(page.getByText(/No plan names a pumper here/)).toBeVisible()
})

test('a lift that is a sum shows it, what nobody measured is in the answer, and a drought whose fall is not recorded is said to be', async ({ page }) => {
  await page.goto(`${site}?pumper=engine-21`)
  const answer = page.getByRole('region', { name: 'What this pumper draws here' })
  await expect(answer).toContainText(/18\.5\sft measured \+ 1\.4\sft dry season/)
  await expect(answer).toContainText('The depth over the strainer is not measured.')
  await page.goto('/district/ostrel-valley/draft/draft-iron-bridge?pumper=engine-12')
  await page.getByRole('radio', { name: 'Drought' }).check()
  await expect(page.getByText(/How far this water falls in a drought is not recorded/).first()).toBeVisible()
  await page.getByRole('link', { name: 'Back-up prime card' }).first().click()
  await expect(page.getByRole('article')).toContainText(/How far this water falls in a drought is not recorded/)
  await expect(page.getByRole('article')).not.toContainText(/Lift [\d.]+\sft, Drought/)
})

test('the card has one number for each thing, vacuum in inches of mercury alone, and lists its lift', async ({ page }) => {
  await page.goto('/district/ostrel-valley/draft/draft-mill-yard/card?pumper=engine-12')
  const card = page.getByRole('article')
  const keep = /Keep (\d+)\sgal/.exec((await card.textContent()) ?? '')?.[1]
  await expect(card).toContainText(new RegExp(`tank down to ${keep}\\sgal`))
  await expect(card.getByRole('listitem').filter({ hasText: /^Lift[\d.]/ })).toContainText('measured')
  await expect(card.locator('dl')).not.toContainText(/ft \(/)
})

test('a test point entered here recalibrates the pumper and its residual is shown', async ({ page }) => {
  await page.goto('/district/ostrel-valley/draft/draft-mill-yard?pumper=engine-22')
  await page.getByRole('button', { name: /^Annual test of this pump/ }).click()
  await page.getByRole('button', { name: 'Add a test' }).first().click()
  const row = page.getByRole('row').filter({ has: page.getByRole('textbox', { name: /lift/i }) }).last()
  await row.getByRole('textbox', { name: /^lift/i }).fill('12')
  await row.getByRole('textbox', { name: /^flow/i }).fill('610')
  await row.getByRole('textbox', { name: /^hard suction(?!.*length)/i }).fill('4.5')
  await row.getByRole('textbox', { name: /^hard suction(?!.*length)/i }).press('Enter')
  await row.getByRole('button', { name: 'Keep this test' }).click()
  await expect(page.getByText(/Fitted to one test point, off by up to 0(\.\d)?%/)).toBeVisible()
})

test('the classical table stands beside ours, every cell', async ({ page }) => {
  await page.goto(site)
  await page.getByRole('button', { name: /^Ours beside the classical table/ }).click()
  const table = page.getByRole('region', { name: 'Ours beside the classical table' })
  await expect(table.getByRole('cell')).toHaveCount(88)
  await page.getByRole('button', { name: /^Where sources disagree/ }).click()
  await expect(page.getByRole('row', { name: /Cover over a strainer/ })).toContainText('2 ft')
})

test('a source says how long it lasts at a typed flow', async ({ page }) => {
  await page.goto('/district/ostrel-valley/draft/draft-cistern?pumper=engine-21')
  await page.getByRole('textbox', { name: 'Draw' }).fill('250')
  await page.getByRole('textbox', { name: 'Draw' }).press('Enter')
  await expect(page.getByRole('group', { name: 'Figures of the source' })).toContainText(/1\sh 5\d\smin|11\d\smin/)
  await expect(page.getByText('overdue')).toBeVisible()
})

test('what nobody has recorded of a source stands on its sheet as a thing to find out', async ({ page }) => {
  await page.goto('/district/ostrel-valley/draft/draft-iron-bridge?pumper=engine-12')
  await expect(page.getByRole('group', { name: 'To find out' })).toContainText('How far the water falls in a drought')
  await page.goto('/district/ostrel-valley/draft/draft-boat-launch?pumper=engine-11')
  await expect(page.getByRole('group', { name: 'Figures of the source' })).toContainText(/about [\d.]+ million\sgal/)
  await expect(page.getByRole('group', { name: 'To find out' })).toHaveCount(0)
})

test('the back-up prime card fits one page of either size', async ({ page }) => {
  await page.goto(`${site}/card?pumper=engine-12`)
  await expect(page.getByRole('heading', { level: 1, name: 'Engine 12 at Covered Bridge, north abutment' })).toBeVisible()
  await expect(page.getByText('Never practice a back-up prime on a pumper whose tank protects an interior crew.')).toBeVisible()
  await expectAccessible(page)
  for (const format of ['A4', 'Letter'] as const) {
    const pdf = (await page.pdf({ format, preferCSSPageSize: false })).toString('latin1')
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g), format).toHaveLength(1)
  }
})
