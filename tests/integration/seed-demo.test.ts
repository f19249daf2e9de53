import { execFile } from 'node:child_process'
import path from 'node:path'
import { promisify } from 'node:util'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { getBlob } from '@/app/_server/blobs'
import { findDocument, listDocuments, softDelete } from '@/app/_server/documents'
import { listSiteEvents } from '@/app/_server/site-events'
import { isSession, playSession, startSession } from '@/lib/exercise'
import type { District, Exercise } from '@/lib/plan'
import { decodeRoadGraph } from '@/lib/roads'
import { decodeHeightGrid, findHeight, type HeightGrid } from '@/lib/terrain'
import { shippedBundle } from '../unit/demo/shipped-demo'
import { root, scratchDatabase, type Scratch } from './support/scratch-database'

let scratch: Scratch

const seed = () =>
  promisify(execFile)(process.execPath, ['--import', 'tsx', path.join(root, 'app/_cli/seed-demo.ts')], { cwd: root, env: { ...process.env, MILLRACE_DATA: scratch.folder } })

beforeAll(async () => {
  scratch = await scratchDatabase()
  await seed()
}, 180_000)
afterAll(() => scratch.remove())

test('the district and its plans are there', async () => {
  expect((await listDocuments(scratch.database, { kind: 'district' })).map(({ id }) => id)).toEqual(['ostrel-valley'])
  expect((await listDocuments(scratch.database, { kind: 'plan', districtId: 'ostrel-valley' })).map(({ id }) => id).sort()).toEqual(['plan-gander-hill', 'plan-school', 'plan-yarrow-bank'])
})

test('three exercises are ready to be led, each with troubles that can come about', async () => {
  const entries = await listDocuments(scratch.database, { kind: 'exercise', districtId: 'ostrel-valley' })
  expect(entries.map(({ id }) => id).sort()).toEqual(['exercise-easy', 'exercise-hard', 'exercise-primer'])
  for (const { id } of entries) {
    const exercise = (await findDocument(scratch.database, id))!.doc as unknown as Exercise
    const session = startSession(exercise.bundle, exercise.injects)
    if (!isSession(session)) throw new Error(`${id}: ${JSON.stringify(session)}`)
    const refused: string[] = []
    const end = playSession(session, 7200, ({ inject, refused: why }) => { if (why) refused.push(inject.title) })
    expect(refused).toEqual([])
    expect(end.facts.map(({ injectId }) => injectId).sort()).toEqual(exercise.injects.map((inject) => inject.id).sort())
    expect(exercise.injects.length).toBeGreaterThanOrEqual(2)
  }
  const primer = (await findDocument(scratch.database, 'exercise-primer'))!.doc as unknown as Exercise
  expect(primer.injects.some(({ title }) => title.startsWith('Primer fails'))).toBe(true)
})

test('two logged drills are there with their events', async () => {
  const entries = await listDocuments(scratch.database, { kind: 'log', districtId: 'ostrel-valley' })
  expect(entries.map(({ id }) => id).sort()).toEqual(['log-gander-hill', 'log-yarrow-bank'])
  for (const { id } of entries) expect((await listSiteEvents(scratch.database, id, 0)).total).toBeGreaterThan(60)
})

test('its road data is kept under the hash that the shipped bundles name', async () => {
  const district = (await findDocument(scratch.database, 'ostrel-valley'))!.doc as unknown as District
  expect(district.roads?.hash).toBe(shippedBundle('plan-gander-hill').district.roads?.hash)
  const { kind, bytes } = await getBlob(scratch.database, district.roads!.hash)
  expect(kind).toBe('roads')
  expect(decodeRoadGraph(bytes)).not.toHaveProperty('code')
  expect((await getBlob(scratch.database, district.map!.hash)).kind).toBe('map')
})

test('its heights are kept under the hash that the shipped bundles name, and give the reservoir its level', async () => {
  const district = (await findDocument(scratch.database, 'ostrel-valley'))!.doc as unknown as District
  expect(district.terrain).toEqual(shippedBundle('plan-gander-hill').district.terrain)
  const { kind, bytes } = await getBlob(scratch.database, district.terrain!.hash)
  expect(kind).toBe('terrain')
  const grid = decodeHeightGrid(bytes) as HeightGrid
  const reservoir = district.sources.find(({ id }) => id === 'stonecrop-reservoir')!
  expect(Math.abs(findHeight(grid, reservoir.point)!.height_ft - reservoir.surfaceElevation_ft!)).toBeLessThan(1)
})

test('a second time changes nothing, and what was deleted stays deleted', async () => {
  await softDelete(scratch.database, 'plan-school')
  await seed()
  expect((await findDocument(scratch.database, 'plan-school'))?.isDeleted).toBe(true)
  expect(await listDocuments(scratch.database, { withDeleted: true })).toHaveLength(9)
}, 120_000)
