import { readFile } from 'node:fs/promises'
import { roadClosures } from '@/lib/exercise'
import { isBundle, readBundle, type Bundle } from '@/lib/plan'
import { decodeRoadGraph } from '@/lib/roads'
import { legFinder, resolveLegs } from '@/lib/supply'
import { demoExercises } from '@/app/_demo/documents/demo-exercises'
import { demoLogs } from '@/app/_demo/documents/demo-logs'
import { toldWords, troubleWords } from '@/app/_exercise/change-words'
import { demoDataSet, demoTerrainSet } from '@/app/_demo/demo-data-set'
import { demoFiles, demoFolder } from '@/app/_demo/demo-files'
import { demoBounds } from '@/app/_demo/frame'
import { putBlob } from '@/app/_server/blobs'
import { checkedDocument, createDocument, findDocument } from '@/app/_server/documents'
import { databaseFile, openDatabase, type Database } from '@/app/_server/open-database'
import { addSiteEvents } from '@/app/_server/site-events'
import { importElevationWithNode } from '../_worker/node/import-elevation-with-node'
import { importWithNode } from '../_worker/node/import-with-node'

/**
 * Brings the demo district into the database: the map and the elevation through the imports a user uses, then
 * the documents. A document that is there is left as it is, changed or deleted though it may be.
 */
const read = (name: string): Promise<Buffer> => readFile(new URL(name, demoFolder))
const readJson = async (name: string): Promise<unknown> => JSON.parse(String(await read(name))) as unknown

async function addMissing(database: Database, given: unknown): Promise<void> {
  const doc = checkedDocument(given)
  if (!(await findDocument(database, doc.id))) await createDocument(database, doc)
}

async function seed(database: Database): Promise<void> {
  const { graphBlob, mapBlob } = await importWithNode(await read(demoFiles.map), demoFiles.map)
  const [roads, map] = [demoDataSet(graphBlob, demoFiles.map), demoDataSet(mapBlob, demoFiles.map)]
  await putBlob(database, roads.hash, 'roads', graphBlob)
  await putBlob(database, map.hash, 'map', mapBlob)
  const heights = await importElevationWithNode(new Uint8Array(await read(demoFiles.elevation)), demoFiles.elevation, demoBounds())
  const terrain = demoTerrainSet(heights, demoFiles.elevation)
  await putBlob(database, terrain.hash, 'terrain', heights.terrainBlob)
  await addMissing(database, { ...(await readJson(demoFiles.district) as object), roads, map, terrain })
  const plans = await readJson(demoFiles.plans) as { id: string }[]
  for (const plan of plans) await addMissing(database, plan)
  const bundles = (await Promise.all(plans.map(async ({ id }) => readBundle(await readJson(demoFiles.bundleOf(id)))))).filter(isBundle)
  const byPlan = new Map(bundles.map((bundle) => [bundle.plan.id as string, bundle]))
  const graph = decodeRoadGraph(graphBlob)
  const resolve = (bundle: Bundle): Bundle => ('code' in graph ? bundle : { ...bundle, legs: resolveLegs(bundle, legFinder(graph, bundle.district.roadNotes)).legs })
  for (const exercise of demoExercises(byPlan, { title: troubleWords, told: toldWords }, (bundle) => roadClosures(bundle, resolve))) await addMissing(database, exercise)
  for (const { log, events } of demoLogs(byPlan)) {
    const isNew = !(await findDocument(database, log.id))
    await addMissing(database, log)
    if (isNew) await addSiteEvents(database, log.id, events)
  }
}

const database = await openDatabase(databaseFile())
try {
  await seed(database)
} finally {
  await database.$disconnect()
}
