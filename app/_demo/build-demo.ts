import { importElevationWithNode } from '@/app/_worker/node/import-elevation-with-node'
import { importWithNode } from '@/app/_worker/node/import-with-node'
import type { Bundle, District, Plan } from '@/lib/plan'
import { decodeRoadGraph } from '@/lib/roads'
import { legFinder, resolveLegs } from '@/lib/supply'
import { buildLandscape, type Landscape } from './build-landscape'
import { demoDataSet, demoTerrainSet } from './demo-data-set'
import { demoFiles } from './demo-files'
import { demoDistrict } from './documents/district'
import { plans } from './documents/plans'
import { elevationTiff } from './elevation-tiff'
import { demoBounds } from './frame'
import { buildOsm } from './osm/build-osm'
import { writeOsm } from './osm/write-osm'

export type Demo = { map: string; elevation: Uint8Array<ArrayBuffer>; district: District; plans: readonly Plan[]; bundles: readonly Bundle[] }

/**
 * The whole demo, anew: the map, the documents that stand on it, and complete bundles whose
 * ways were found on the roads that the app's own import makes of that map.
 */
export async function buildDemo(land: Landscape = buildLandscape()): Promise<Demo> {
  const map = writeOsm(buildOsm(land))
  const district = demoDistrict(land)
  const imported = await importWithNode(new TextEncoder().encode(map), demoFiles.map)
  const graph = decodeRoadGraph(imported.graphBlob)
  if ('code' in graph) throw new RangeError(`the demo road graph is refused: ${graph.code}`)
  const elevation = elevationTiff(land.field, land.water)
  const terrain = demoTerrainSet(await importElevationWithNode(elevation, demoFiles.elevation, demoBounds()), demoFiles.elevation)
  const known: District = { ...district, roads: demoDataSet(imported.graphBlob, demoFiles.map), map: demoDataSet(imported.mapBlob, demoFiles.map), terrain }
  const find = legFinder(graph, known.roadNotes)
  const bundles = plans.map((plan): Bundle => {
    const bundle: Bundle = { format: 'millrace-plan', version: 1, district: known, plan, legs: [] }
    return { ...bundle, legs: resolveLegs(bundle, find).legs }
  })
  return { map, elevation, district, plans, bundles }
}
