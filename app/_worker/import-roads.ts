import type { Bounds } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import { encodeDistrictMap, mapFeatures, readOsm, type DistrictMap, type OsmExtract, type ReadOptions } from '@/lib/osm'
import { buildRoadGraph, encodeRoadGraph, noRoadsIssue, roadFlag, type RoadGraph } from '@/lib/roads'
import { FEET_PER_MILE } from '@/lib/units'

export type ImportOptions = ReadOptions

export type ImportSummary = {
  readonly fileName: string
  readonly fileKind: OsmExtract['kind']
  readonly bounds: Bounds
  /** Date of the data as the file states it. */
  readonly dataDate?: string
  readonly roadCount: number
  readonly junctionCount: number
  readonly road_mi: number
  readonly bridgeCount: number
  /** Bridges that carry a posted weight, or the statement that none is posted. */
  readonly bridgeKnownCount: number
  readonly weightLimitCount: number
  readonly heightLimitCount: number
  readonly widthLimitCount: number
  readonly turnRestrictionCount: number
  readonly turnRestrictionUsedCount: number
  /** Share of the junctions that all reach each other. */
  readonly connectedShare: number
  readonly waterAreaCount: number
  readonly waterwayCount: number
  readonly buildingCount: number
  readonly placeCount: number
  readonly hydrantCount: number
  readonly otherSourceCount: number
}

export type DistrictImport = {
  readonly graphBlob: Uint8Array<ArrayBuffer>
  readonly mapBlob: Uint8Array<ArrayBuffer>
  readonly summary: ImportSummary
  readonly issues: readonly Issue[]
}

/**
 * Makes a district's road graph and drawn map from a file the user chose. Runs the same in
 * a worker and on the command line.
 *
 * @param bytes    the whole file
 * @param fileName shown with the data, never used to tell the kind
 * @returns both blobs with what they hold, or the one blocking issue that stopped it
 */
export async function importDistrictData(bytes: Uint8Array, fileName: string, options: ImportOptions): Promise<DistrictImport | Issue> {
  const extract = await readOsm(bytes, { ...options, onProgress: (doneShare) => options.onProgress?.(doneShare * 0.6) })
  if ('code' in extract) return extract
  const { graph, issues } = buildRoadGraph(extract)
  const noRoads = noRoadsIssue(graph)
  if (noRoads) return noRoads
  await options.onProgress?.(0.8)
  const map = mapFeatures(extract)
  const result = {
    graphBlob: encodeRoadGraph(graph),
    mapBlob: encodeDistrictMap(map),
    summary: summaryOf(fileName, extract, graph, map, issues),
    issues: [...extract.issues, ...issues],
  }
  await options.onProgress?.(1)
  return result
}

function summaryOf(fileName: string, extract: OsmExtract, graph: RoadGraph, map: DistrictMap, issues: readonly Issue[]): ImportSummary {
  const countLayer = (layer: string): number => map.features.filter((feature) => feature.layer === layer).length
  const countKnown = (limits: Float32Array): number => limits.filter((limit) => !Number.isNaN(limit)).length
  const bridges = [...graph.roadFlags.keys()].filter((road) => ((graph.roadFlags[road] ?? 0) & roadFlag.bridge) !== 0)
  const unused = issues.find(({ code }) => code === 'roads-restrictions-unused')
  const hydrantCount = map.features.filter(({ layer, kind }) => layer === 'source' && kind === 'hydrant').length
  return {
    fileName,
    fileKind: extract.kind,
    bounds: extract.bounds,
    ...(extract.dataDate === undefined ? {} : { dataDate: extract.dataDate }),
    roadCount: graph.roadId.length,
    junctionCount: graph.nodeLatE7.length,
    road_mi: graph.edgeLength_ft.reduce((sum, length_ft) => sum + length_ft, 0) / FEET_PER_MILE,
    bridgeCount: bridges.length,
    bridgeKnownCount: bridges.filter(
      (road) => !Number.isNaN(graph.roadMaxWeight_lb[road] ?? NaN) || ((graph.roadFlags[road] ?? 0) & roadFlag.weightPostedNone) !== 0,
    ).length,
    weightLimitCount: countKnown(graph.roadMaxWeight_lb),
    heightLimitCount: countKnown(graph.roadMaxHeight_ft),
    widthLimitCount: countKnown(graph.roadMaxWidth_ft),
    turnRestrictionCount: extract.counts.restrictionCount,
    turnRestrictionUsedCount: unused ? Number(unused.values['usedCount'] ?? 0) : extract.counts.restrictionCount,
    connectedShare: graph.componentSize.reduce((most, size) => Math.max(most, size), 0) / Math.max(1, graph.nodeLatE7.length),
    waterAreaCount: countLayer('water'),
    waterwayCount: countLayer('waterway'),
    buildingCount: countLayer('building'),
    placeCount: countLayer('place'),
    hydrantCount,
    otherSourceCount: countLayer('source') - hydrantCount,
  }
}
