import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import distance from '@turf/distance'
import nearestPointOnLine from '@turf/nearest-point-on-line'
import { lineString, point } from '@turf/helpers'
import { describe, expect, test } from 'vitest'
import { mapFeatures, type OsmExtract } from '@/lib/osm'
import { buildRoadGraph, encodeRoadGraph, findNearest } from '@/lib/roads'
import { extractNamed, graphNamed } from './extracts'

type Case = { name: string; given: string; expected: number; tolerance: number }
const { cases } = JSON.parse(readFileSync(fileURLToPath(new URL('extract-counts.json', import.meta.url)), 'utf8')) as { cases: Case[] }

const waysWith = ({ wayTags }: OsmExtract, key: string, value?: string): number =>
  wayTags.filter((tags) => (value === undefined ? tags[key] !== undefined : tags[key] === value)).length
const hydrants = (extract: OsmExtract, kinds: string[]): number => mapFeatures(extract).features.filter(({ layer, kind }) => layer === 'source' && kinds.includes(kind)).length
const counted: Record<string, (extract: OsmExtract) => number> = {
  nodes: ({ counts }) => counts.nodeCount,
  ways: ({ counts }) => counts.wayCount,
  highways: ({ counts }) => counts.highwayCount,
  restrictions: ({ counts }) => counts.restrictionCount,
  maxweight: (extract) => waysWith(extract, 'maxweight'),
  bridge: (extract) => waysWith(extract, 'bridge'),
  water: (extract) => waysWith(extract, 'natural', 'water'),
  waterway: (extract) => waysWith(extract, 'waterway'),
  hydrants: (extract) => hydrants(extract, ['hydrant', 'pondHydrant']),
  pondHydrants: (extract) => hydrants(extract, ['pondHydrant']),
}

describe.each(['north-bayreuth.osm.pbf', 'north-bayreuth.osm.gz'])('%s', (file) => {
  test.each(cases)('holds as many $name as were counted outside', async ({ given, expected, tolerance }) => {
    const found = counted[given]?.(await extractNamed(file)) ?? NaN
    expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance)
  })
})

test('PBF and XML of one area give the same graph, byte for byte', async () => {
  const [fromPbf, fromXml] = await Promise.all([graphNamed('north-bayreuth.osm.pbf'), graphNamed('north-bayreuth.osm.gz')])
  expect(Buffer.from(encodeRoadGraph(fromPbf)).equals(Buffer.from(encodeRoadGraph({ ...fromXml, dataDate: fromPbf.dataDate })))).toBe(true)
})

test('PBF and XML of one area give the same drawn map', async () => {
  const [fromPbf, fromXml] = await Promise.all([extractNamed('north-bayreuth.osm.pbf'), extractNamed('north-bayreuth.osm.gz')])
  expect(mapFeatures(fromPbf).features).toEqual(mapFeatures(fromXml).features)
})

test('lengths of roads agree with @turf/distance to a part in a thousand million', async () => {
  const graph = buildRoadGraph(await extractNamed('north-bayreuth.osm.pbf')).graph
  for (let edge = 0; edge < graph.edgeFrom.length; edge += 7) {
    let length_ft = 0
    for (let i = graph.shapeStart[edge] ?? 0; i < (graph.shapeStart[edge + 1] ?? 0) - 1; i++) {
      const at = (j: number): [number, number] => [(graph.shapeLonE7[j] ?? 0) / 1e7, (graph.shapeLatE7[j] ?? 0) / 1e7]
      length_ft += distance(at(i), at(i + 1), { units: 'meters' }) / 0.3048
    }
    expect(Math.abs((graph.edgeLength_ft[edge] ?? NaN) - length_ft)).toBeLessThanOrEqual(1e-9 * length_ft + 1e-6)
  }
})

test('the nearest road is no further than @turf/nearest-point-on-line finds over all roads', async () => {
  const graph = buildRoadGraph(await extractNamed('north-bayreuth.osm.pbf')).graph
  const { south, west, north, east } = graph.bounds
  const lines = [...graph.edgeFrom.keys()].map((edge) => {
    const coordinates: [number, number][] = []
    for (let i = graph.shapeStart[edge] ?? 0; i < (graph.shapeStart[edge + 1] ?? 0); i++) coordinates.push([(graph.shapeLonE7[i] ?? 0) / 1e7, (graph.shapeLatE7[i] ?? 0) / 1e7])
    return lineString(coordinates)
  })
  for (let i = 0; i < 8; i++) {
    const place = { lat: south + ((north - south) * (i + 0.5)) / 8, lon: west + (((east - west) * (i * 5 + 0.5)) % (east - west)) / 1 }
    const expected_m = Math.min(...lines.map((line) => nearestPointOnLine(line, point([place.lon, place.lat]), { units: 'meters' }).properties.dist ?? Infinity))
    const found = findNearest(graph, place)
    // The two take the nearest point on a plane and on a sphere: within a part in a thousand over a few hundred metres.
    expect(Math.abs((found?.distance_ft ?? NaN) * 0.3048 - expected_m)).toBeLessThanOrEqual(0.05 + 0.001 * expected_m)
  }
})
