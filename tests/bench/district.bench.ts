import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { chromium, type Locator, type Page } from '@playwright/test'
import { bundleFromDocuments } from '@/app/_client/bundle-documents'
import { getBlob } from '@/app/_server/blobs'
import { checkedDocument, createDocument, findDocument } from '@/app/_server/documents'
import { openDatabase } from '@/app/_server/open-database'
import { PlannerEngine } from '@/app/_worker/planner-engine'
import type { District, Plan } from '@/lib/plan'
import { decodeRoadGraph } from '@/lib/roads'
import { startServer } from '../../e2e/support/start-server'
import { browserFlags, ensureBrowser } from '../../scripts/house/browser.mjs'
import { framesOf, mean } from './support/browser-frames'
import { median, ratio, valueAt } from './support/cost'
import { lettersOf, opened, shownAfter, waitsAndFollows, waitsOf, watchInputsOf } from './support/input-to-paint'
import { LARGE, largeDistrict } from './support/large-district'

/**
 * Everyday use of a district of some 200 places, 40 apparatus and 30 plans, in a real browser, on this machine and with its
 * processor slowed four times: how long each input waits for its frame, in frames of the page at rest, beside the same with
 * the small demonstration district.
 */
const FRAMES = 150
const SLOWER = [1, 4] as const
const DEMO = 'ostrel-valley'

type Subject = { name: string; district: string; plan: string; word: string; figure: string }
const small: Subject = { name: 'small', district: `/district/${DEMO}`, plan: 'plan-gander-hill', word: 'pond', figure: 'Engine 11' }

/** What was measured, [ms]; what is counted in frames is set against those of the page at rest. */
type Measured = { readonly rest_ms: number; readonly waits: ReadonlyMap<string, readonly number[]> }

const folder = mkdtempSync(path.join(tmpdir(), 'millrace-district-'))
try {
  execFileSync(process.execPath, ['scripts/make-database.mjs', '--demo'], { env: { ...process.env, MILLRACE_DATA: folder } })
  const large = await storeLarge(path.join(folder, 'millrace.db'))
  const server = await startServer(folder)
  const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: browserFlags() })
  process.stdout.write(`Everyday use in a browser: ${LARGE.ponds + LARGE.hydrants + LARGE.draftSites + LARGE.hazards + LARGE.roadNotes + LARGE.stations} places, ${LARGE.pumpers + LARGE.tenders + LARGE.portablePumps} apparatus, ${LARGE.plans} plans; beside it the demonstration district\n`)
  for (const slower of SLOWER) {
    const [few, many] = [await measure(small, slower), await measure(large, slower)]
    process.stdout.write(`  processor ${slower === 1 ? 'as it is' : `${slower} times slower`}; a frame at rest ${few.rest_ms.toFixed(1)} ms, ${many.rest_ms.toFixed(1)} ms\n`)
    for (const [name, waits] of many.waits) {
      const others = few.waits.get(name) ?? []
      process.stdout.write(`  ${name.padEnd(52)}${median(others).toFixed(0).padStart(7)} ms${median(waits).toFixed(0).padStart(7)} ms, longest ${valueAt(waits, 1).toFixed(0)} ms\n`)
      ratio(`${name}, ${slower}×`, median(waits) / many.rest_ms, `a frame at rest, ${many.rest_ms.toFixed(1)} ms`)
      ratio(`${name}, ${slower}×`, median(waits) / median(others), `in the small district, ${median(others).toFixed(0)} ms`)
    }
  }
  await browser.close()
  await server.stop()

  async function measure(subject: Subject, slower: number): Promise<Measured> {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, bypassCSP: true, baseURL: server.address })
    await watchInputsOf(page)
    const waits = new Map<string, readonly number[]>()
    // Once as it is, so that the server has loaded every page and no screen pays for being first.
    for (const place of ['survey', 'resources', `plan/${subject.plan}`]) await page.goto(`${subject.district}/${place}`, { waitUntil: 'load' })
    // A first visit puts the app on the device, in the background: when that is over, days are as they are from then on.
    await page.evaluate('Promise.race([navigator.serviceWorker.ready, new Promise((resolve) => { setTimeout(resolve, 20_000) })]).then(() => undefined)')
    const session = await page.context().newCDPSession(page)
    await session.send('Emulation.setCPUThrottlingRate', { rate: slower })
    const rest_ms = await survey(page, subject, waits)
    await resources(page, subject, waits)
    await plan(page, subject, waits)
    await find(page, subject, waits)
    await page.close()
    return { rest_ms, waits }
  }
} finally {
  rmSync(folder, { recursive: true, force: true })
}

async function survey(page: Page, { district, word }: Subject, waits: Map<string, readonly number[]>): Promise<number> {
  const marker = '[data-site-id] [data-name]'
  waits.set('survey: opening, until its symbols are on the map', [await opened(page, `${district}/survey`, `document.querySelector('${marker}')`)])
  await page.waitForTimeout(2000)
  const rest = mean(await framesOf(page, FRAMES))
  const heads = page.locator('main [data-place] button[aria-expanded]')
  const search = page.getByRole('searchbox')
  await search.focus()
  const typed = await waitsAndFollows(page, 'input', lettersOf(page, word))
  waits.set('survey: a letter typed into its search', typed.waits)
  waits.set('survey: until list and map have followed it', typed.follows)
  const taken = await waitsAndFollows(page, 'input', [...word].map(() => () => page.keyboard.press('Backspace')))
  waits.set('survey: a letter taken out of it', taken.waits)
  waits.set('survey: until list and map have followed that', taken.follows)
  waits.set('survey: choosing in the list', await waitsOf(page, 'click', [1, 3, 5, 7, 9].map((index) => () => heads.nth(index).click())))
  await page.waitForTimeout(600)
  const chosen = page.locator('[data-site-id][aria-pressed="true"]')
  waits.set('survey: dragging a place, frame to frame', await framesWhile(page, chosen))
  waits.set('survey: putting it down', await waitsOf(page, 'pointerup', [() => page.mouse.up()]))
  await page.waitForTimeout(600)
  await page.getByRole('region', { name: 'Map', exact: true }).hover({ position: { x: 20, y: 200 } })
  await page.mouse.down()
  waits.set('survey: panning the map, frame to frame', await wander(page, { x: 700, y: 400 }))
  waits.set('survey: letting it go', await waitsOf(page, 'pointerup', [() => page.mouse.up()]))
  return rest
}

async function resources(page: Page, { district, figure }: Subject, waits: Map<string, readonly number[]>): Promise<void> {
  waits.set('resources: opening', [await opened(page, `${district}/resources`, `document.querySelector('main button[aria-expanded]')`)])
  await page.waitForTimeout(1000)
  const head = page.getByRole('button', { name: new RegExp(`^${figure}\\b`) })
  waits.set('resources: opening a vehicle', await waitsOf(page, 'click', [() => head.click(), () => head.click(), () => head.click()]))
  const tank = page.getByRole('textbox', { name: 'Tank', exact: true }).first()
  await tank.selectText()
  waits.set('resources: a digit typed into a figure', await waitsOf(page, 'input', lettersOf(page, '1234')))
  waits.set('resources: the figure taken over', await waitsOf(page, 'keydown', [() => page.keyboard.press('Enter')]))
  await page.getByRole('searchbox').focus()
  const letters = await waitsAndFollows(page, 'input', lettersOf(page, 'tender'))
  waits.set('resources: a letter typed into its search', letters.waits)
  waits.set('resources: until its list has followed', letters.follows)
}

async function plan(page: Page, subject: Subject, waits: Map<string, readonly number[]>): Promise<void> {
  const answer = `document.querySelector('main [aria-live][aria-busy]')`
  const isWhole = `${answer}?.getAttribute('aria-busy') === 'false'`
  waits.set('plan: opening, until the whole answer', [await opened(page, `${subject.district}/plan/${subject.plan}?part=fireGround`, isWhole)])
  const held = page.getByRole('textbox', { name: 'Held for' })
  await page.waitForTimeout(4000)
  const [typed, taken, answered]: [number[], number[], number[]] = [[], [], []]
  for (const text of ['61', '62', '63']) {
    await held.selectText()
    typed.push(...(await waitsOf(page, 'input', lettersOf(page, `${text}`))))
    await page.keyboard.type(' min')
    taken.push(...(await waitsOf(page, 'keydown', [() => page.keyboard.press('Enter')])))
    await page.waitForFunction(isWhole)
    await held.fill(`${text}.5 min`)
    answered.push(await shownAfter(page, 'keydown', () => held.press('Enter'), `(window.millraceAsked ||= ${answer}?.textContent.includes('before the last change')) && !${answer}.textContent.includes('before the last change')`))
    await page.evaluate('void delete window.millraceAsked')
    await page.waitForFunction(isWhole)
  }
  waits.set('plan: a digit typed into a figure', typed)
  waits.set('plan: the figure taken over', taken)
  waits.set('plan: until its answer is shown', answered)
  const site = page.getByRole('region', { name: 'Map', exact: true }).locator('[data-site-id]').filter({ has: page.locator('[data-name]') }).first()
  await page.waitForTimeout(3000)
  waits.set('plan: dragging its fill site, frame to frame', await framesWhile(page, site))
  await page.mouse.up()
}

async function find(page: Page, { district, word }: Subject, waits: Map<string, readonly number[]>): Promise<void> {
  await page.goto(`${district}/resources`)
  await page.waitForTimeout(1500)
  const isOpen = `document.querySelector('[cmdk-item]')`
  const times: number[] = []
  for (let turn = 0; turn < 3; turn++) {
    times.push(await shownAfter(page, 'keydown', () => page.keyboard.press('Control+k'), isOpen))
    await page.keyboard.press('Escape')
    await page.waitForTimeout(300)
  }
  waits.set('find: Ctrl-K, until the list is there', times)
  await page.keyboard.press('Control+k')
  await page.getByRole('combobox', { name: 'Find anything' }).focus()
  waits.set('find: a letter typed', await waitsOf(page, 'input', lettersOf(page, word)))
}

/** Frame times, [ms], while something is dragged about; it is still held afterwards. */
async function framesWhile(page: Page, thing: Locator): Promise<number[]> {
  const box = await thing.boundingBox()
  if (!box) throw new Error('there is nothing to drag on the map')
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  await page.mouse.move(middle.x, middle.y)
  await page.waitForTimeout(1000)
  await page.mouse.down()
  return wander(page, middle)
}

function wander(page: Page, { x, y }: { x: number; y: number }): Promise<number[]> {
  return framesOf(page, FRAMES, async (isDone) => {
    for (let turn = 0; !isDone(); turn++) await page.mouse.move(x + 90 * Math.sin(turn / 20), y + 60 * Math.sin(turn / 12))
  })
}

/** Brings the large district into the database, on the roads of the demonstration. */
async function storeLarge(file: string): Promise<Subject> {
  const database = await openDatabase(file)
  const demo = (await findDocument(database, DEMO))?.doc as District | undefined
  const blob = demo?.roads && (await getBlob(database, demo.roads.hash)).bytes
  const graph = blob && decodeRoadGraph(blob)
  if (!demo || !graph || 'code' in graph) throw new Error('the demonstration district has no roads to lay places along')
  const { roads, map, terrain, bounds } = demo
  const { district, plans } = largeDistrict(graph, { ...(roads && { roads }), ...(map && { map }), ...(terrain && { terrain }), ...(bounds && { bounds }) })
  for (const document of [district, ...plans]) await createDocument(database, checkedDocument(document))
  await database.$disconnect()
  return { name: 'large', district: `/district/${district.id}`, plan: (await firstAnswered(district, plans, blob)).id, word: 'pond', figure: 'Engine 11' }
}

/** The first plan that has an answer: of one that none can reach only the refusal would be measured. */
async function firstAnswered(district: District, plans: readonly Plan[], roads: Uint8Array): Promise<Plan> {
  const engine = new PlannerEngine(() => Promise.resolve(roads))
  for (const plan of plans) {
    const { result } = await engine.begin(bundleFromDocuments(district, plan))
    if (result.sustainable_gpm !== null) return plan
  }
  throw new Error('no plan of the large district has an answer')
}
