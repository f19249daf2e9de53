import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { chromium } from '@playwright/test'
import { importWithNode } from '@/app/_worker/node/import-with-node'
import { hashOf } from '@/app/_client/blobs'
import { putBlob } from '@/app/_server/blobs'
import { checkedDocument, createDocument } from '@/app/_server/documents'
import { openDatabase } from '@/app/_server/open-database'
import { OSM_ATTRIBUTION } from '@/lib/osm/attribution'
import { startServer } from '../../e2e/support/start-server'
import { browserFlags, ensureBrowser } from '../../scripts/house/browser.mjs'
import { at, framesOf, mean } from './support/browser-frames'
import { portoBundle } from './support/porto-bundle'

/**
 * Frames while a fill site is dragged across a city's roads with eight tenders behind it, in a real
 * browser, against the frames of the same page at rest.
 */
const FRAMES = 300
const NAME = 'porto-roads.osm.pbf'
const folder = mkdtempSync(path.join(tmpdir(), 'millrace-frames-'))
try {
  execFileSync(process.execPath, ['scripts/make-database.mjs'], { env: { ...process.env, MILLRACE_DATA: folder } })
  const planAddress = await storePorto(path.join(folder, 'millrace.db'))
  const server = await startServer(folder)
  const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: browserFlags() })
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
  await page.goto(server.address + planAddress)
  await page.getByText(/expected\s[\d,]+\sgpm/i).first().waitFor({ timeout: 60_000 })
  const site = page.getByRole('region', { name: 'Map', exact: true }).getByRole('button', { name: /^Fill/ })
  const box = await site.boundingBox()
  if (!box) throw new Error('the fill site is not on the map')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.waitForTimeout(5000)
  const rest = await framesOf(page, FRAMES)
  await page.mouse.down()
  const dragged = await framesOf(page, FRAMES, async (isDone) => {
    for (let turn = 0; !isDone(); turn++) await page.mouse.move(x + 90 * Math.sin(turn / 40), y + 60 * Math.sin(turn / 25))
  })
  await page.mouse.up()
  process.stdout.write([
    'Frames while a fill site is dragged, 8 tenders, porto-roads, in a browser',
    `  the page at rest   median ${at(rest, 0.5)} ms, 95 % under ${at(rest, 0.95)} ms, longest ${at(rest, 1)} ms`,
    `  dragging           median ${at(dragged, 0.5)} ms, 95 % under ${at(dragged, 0.95)} ms, longest ${at(dragged, 1)} ms`,
    `  ratio              ${(mean(dragged) / mean(rest)).toFixed(2)} times the time of a frame at rest, on average`,
    '',
  ].join('\n'))
  await browser.close()
  await server.stop()
} finally {
  rmSync(folder, { recursive: true, force: true })
}

/** Brings the city and its plan into a new database, as the app's import does. @returns address of the plan */
async function storePorto(file: string): Promise<string> {
  const database = await openDatabase(file)
  const { graphBlob, mapBlob } = await importWithNode(readFileSync(new URL(`../data/${NAME}`, import.meta.url)), NAME)
  const stored = async (kind: 'roads' | 'map', bytes: Uint8Array<ArrayBuffer>) => {
    const hash = await hashOf(bytes)
    await putBlob(database, hash, kind, bytes)
    return { hash, name: NAME, attribution: OSM_ATTRIBUTION, importedOn: '2026-11-25' }
  }
  const roads = await stored('roads', graphBlob)
  const { district, plan } = portoBundle(roads.hash)
  await createDocument(database, checkedDocument({ ...district, roads, map: await stored('map', mapBlob) }))
  await createDocument(database, checkedDocument(plan))
  await database.$disconnect()
  return `/district/${district.id}/plan/${plan.id}`
}
