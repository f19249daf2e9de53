import type { Point } from '../geo'
import { issue, type Issue } from '../issue'
import { mapLayers, type DistrictMap, type MapFeature } from './district-map'
import { DEGREES_E7 } from './osm-extract'
import { bytesFromTexts, findTextsIn, packBlob, TextPool, unpackBlob, type Sections } from './pack-blob'

const MAGIC = 'MRDM'
/** Raised whenever a layer or table changes: a map is made again from its file. */
const DISTRICT_MAP_VERSION = 1

const layout = {
  bounds: 'f64', dataDate: 'u8', texts: 'u8',
  layer: 'u8', shape: 'u8', name: 'u32', kind: 'u32', details: 'u32', osmId: 'f64',
  runStart: 'u32', isHole: 'u8', pointStart: 'u32', latE7: 'i32', lonE7: 'i32',
} as const

const shapes = ['point', 'line', 'area'] as const

/** The drawn map as one binary blob, the same bytes for the same map. */
export function encodeDistrictMap({ bounds, dataDate, features }: DistrictMap): Uint8Array<ArrayBuffer> {
  const pool = new TextPool()
  const runCount = features.reduce((sum, { runs }) => sum + runs.length, 0)
  const pointCount = features.reduce((sum, { runs }) => sum + runs.reduce((points, run) => points + run.length, 0), 0)
  const stored = {
    layer: Uint8Array.from(features, ({ layer }) => mapLayers.indexOf(layer)),
    shape: Uint8Array.from(features, ({ shape }) => shapes.indexOf(shape)),
    name: Uint32Array.from(features, ({ name }) => pool.indexFor(name)),
    kind: Uint32Array.from(features, ({ kind }) => pool.indexFor(kind)),
    details: Uint32Array.from(features, ({ details }) => pool.indexFor(details)),
    osmId: Float64Array.from(features, ({ osmId }) => osmId),
    runStart: new Uint32Array(features.length + 1),
    isHole: new Uint8Array(runCount),
    pointStart: new Uint32Array(runCount + 1),
    latE7: new Int32Array(pointCount),
    lonE7: new Int32Array(pointCount),
  }
  let run = 0, at = 0
  features.forEach((feature, i) => {
    feature.runs.forEach((points, r) => {
      stored.isHole[run] = feature.isHole[r] ? 1 : 0
      for (const { lat, lon } of points) {
        stored.latE7[at] = Math.round(lat * DEGREES_E7)
        stored.lonE7[at++] = Math.round(lon * DEGREES_E7)
      }
      stored.pointStart[++run] = at
    })
    stored.runStart[i + 1] = run
  })
  return packBlob(MAGIC, DISTRICT_MAP_VERSION, layout, {
    ...stored,
    bounds: Float64Array.of(bounds.south, bounds.west, bounds.north, bounds.east),
    dataDate: bytesFromTexts([dataDate]),
    texts: bytesFromTexts(pool.texts),
  })
}

/** @returns the map, or `district-map-unreadable` with the reason: not-ours, newer-version, older-version, damaged */
export function decodeDistrictMap(blob: Uint8Array): DistrictMap | Issue {
  const stored = unpackBlob(MAGIC, DISTRICT_MAP_VERSION, layout, blob)
  if (typeof stored === 'string') return refusal(stored)
  const texts = findTextsIn(stored.texts), [dataDate] = findTextsIn(stored.dataDate) ?? []
  const [south, west, north, east] = stored.bounds
  if (!texts || dataDate === undefined || south === undefined || west === undefined || north === undefined || east === undefined) return refusal('damaged')
  if (!isConsistent(stored, texts.length) || !(south <= north && west <= east)) return refusal('damaged')
  const features: MapFeature[] = []
  for (let i = 0; i < stored.layer.length; i++) {
    const start = stored.runStart[i] ?? 0, end = stored.runStart[i + 1] ?? 0
    const shape = shapes[stored.shape[i] ?? 0], layer = mapLayers[stored.layer[i] ?? 0]
    if (!shape || !layer) return refusal('damaged')
    const runs: Point[][] = []
    for (let run = start; run < end; run++) runs.push(pointsOf(stored, run))
    features.push({
      layer, shape, runs,
      name: texts[stored.name[i] ?? 0] ?? '', kind: texts[stored.kind[i] ?? 0] ?? '', details: texts[stored.details[i] ?? 0] ?? '',
      osmId: stored.osmId[i] ?? 0,
      isHole: shape === 'area' ? Array.from(stored.isHole.subarray(start, end), (hole) => hole === 1) : [],
    })
  }
  return { bounds: { south, west, north, east }, dataDate, features }
}

const refusal = (reason: string): Issue => issue('district-map-unreadable', 'block', [], { reason })

type Stored = Sections<typeof layout>

function pointsOf({ pointStart, latE7, lonE7 }: Stored, run: number): Point[] {
  const points: Point[] = []
  for (let at = pointStart[run] ?? 0; at < (pointStart[run + 1] ?? 0); at++) {
    points.push({ lat: (latE7[at] ?? 0) / DEGREES_E7, lon: (lonE7[at] ?? 0) / DEGREES_E7 })
  }
  return points
}

const rises = (starts: Uint32Array, count: number, end: number): boolean =>
  starts.length === count + 1 && starts[0] === 0 && starts[count] === end && starts.every((start, i) => i === 0 || start >= (starts[i - 1] ?? 0))

function isConsistent(stored: Stored, textCount: number): boolean {
  const count = stored.layer.length, runCount = stored.isHole.length
  return (
    [stored.shape, stored.name, stored.kind, stored.details, stored.osmId].every(({ length }) => length === count) &&
    stored.layer.every((layer) => layer < mapLayers.length) && stored.shape.every((shape) => shape < shapes.length) &&
    [stored.name, stored.kind, stored.details].every((texts) => texts.every((text) => text < textCount)) &&
    rises(stored.runStart, count, runCount) && rises(stored.pointStart, runCount, stored.latE7.length) &&
    stored.lonE7.length === stored.latE7.length &&
    stored.latE7.every((lat) => Math.abs(lat) <= 90 * DEGREES_E7) && stored.lonE7.every((lon) => Math.abs(lon) <= 180 * DEGREES_E7)
  )
}
