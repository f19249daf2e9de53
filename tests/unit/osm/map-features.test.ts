import { describe, expect, test } from 'vitest'
import { decodeDistrictMap, encodeDistrictMap, geojsonFromDistrictMap, mapFeatures, readOsm, sourceKindOf, type DistrictMap } from '@/lib/osm'
import { ringsFromWays } from '@/lib/osm/rings'
import { unpackers } from './unpackers'

const node = (id: number, lat: number, lon: number, tags = ''): string => `<node id="${id}" lat="${lat}" lon="${lon}">${tags}</node>`
const way = (id: number, refs: number[], tags: string): string => `<way id="${id}">${refs.map((ref) => `<nd ref="${ref}"/>`).join('')}${tags}</way>`
const tag = (k: string, v: string): string => `<tag k="${k}" v="${v}"/>`

/** A lake whose shore is two ways, with an island; a barn; a creek that leaves the file; a hydrant and a tank. */
const district = `<osm version="0.6">
${[node(1, 0, 0), node(2, 0, 1), node(3, 1, 1), node(4, 1, 0), node(5, 0.4, 0.4), node(6, 0.4, 0.6), node(7, 0.6, 0.6), node(8, 2, 0), node(9, 2, 1), node(10, 2, 2)].join('')}
${node(20, 0.5, 2, tag('emergency', 'fire_hydrant') + tag('fire_hydrant:type', 'pond') + tag('fire_hydrant:diameter', '100'))}
${node(21, 0.5, 3, tag('place', 'hamlet') + tag('name', 'Alder &amp; Oak'))}
${node(22, 0.5, 3.1, tag('place', 'hamlet'))}
${way(100, [1, 2, 3], '')}${way(101, [1, 4, 3], '')}${way(102, [5, 6, 7, 5], '')}
${way(103, [8, 9], tag('highway', 'secondary') + tag('ref', 'CR 9') + tag('bridge', 'yes'))}
${way(104, [8, 9, 10, 8], tag('building', 'barn'))}
${way(105, [8, 99, 9, 10], tag('waterway', 'stream') + tag('name', 'Mill Creek'))}
${way(106, [8, 9, 10, 8], tag('man_made', 'water_tank') + tag('volume', '40'))}
<relation id="7"><member type="way" ref="100" role="outer"/><member type="way" ref="101" role="outer"/><member type="way" ref="102" role="inner"/>
${tag('type', 'multipolygon') + tag('natural', 'water') + tag('water', 'lake') + tag('name', 'Long Pond')}</relation></osm>`

async function mapOf(text: string): Promise<DistrictMap> {
  const extract = await readOsm(new TextEncoder().encode(text), unpackers)
  if ('code' in extract) throw new Error(JSON.stringify(extract))
  return mapFeatures(extract)
}

describe('the drawn map', () => {
  test('a lake made of several shores is one area with its island', async () => {
    const lake = (await mapOf(district)).features.find(({ layer }) => layer === 'water')
    expect(lake).toMatchObject({ name: 'Long Pond', kind: 'lake', osmId: 7, shape: 'area', isHole: [false, true] })
    expect(lake?.runs.map((run) => run.length)).toEqual([5, 4])
    expect(lake?.runs[0]?.[0]).toEqual(lake?.runs[0]?.[4])
  })
  test('roads carry their name or reference and say where they are bridges', async () => {
    expect((await mapOf(district)).features.filter(({ layer }) => layer === 'mainRoad')).toMatchObject([{ name: 'CR 9', kind: 'bridge', shape: 'line', osmId: 103 }])
  })
  test('a stream that leaves the file is drawn as far as the file knows it', async () => {
    const streams = (await mapOf(district)).features.filter(({ layer }) => layer === 'waterway')
    expect(streams.map(({ name, kind, runs }) => [name, kind, runs[0]?.length])).toEqual([['Mill Creek', 'stream', 2]])
  })
  test('possible sources carry what the data says of them; a building is an area', async () => {
    const { features } = await mapOf(district)
    expect(features.filter(({ layer }) => layer === 'source').map(({ kind, details }) => [kind, details])).toEqual([
      ['pondHydrant', 'fire_hydrant:type=pond;fire_hydrant:diameter=100'], ['tank', 'volume=40'],
    ])
    expect(features.filter(({ layer }) => layer === 'building')).toHaveLength(1)
    expect(features.filter(({ layer }) => layer === 'place').map(({ name }) => name)).toEqual(['Alder & Oak'])
  })
  test('a map comes back from its blob as it went in', async () => {
    const map = await mapOf(district)
    expect(decodeDistrictMap(encodeDistrictMap(map))).toEqual(map)
  })
  test('GeoJSON has longitude first and holes inside their polygon', async () => {
    const drawn = geojsonFromDistrictMap(await mapOf(district), ['water', 'place'])
    expect(drawn.features.map(({ properties }) => properties.layer).sort()).toEqual(['place', 'water'])
    const place = drawn.features.find(({ properties }) => properties.layer === 'place')
    expect(place?.geometry).toEqual({ type: 'Point', coordinates: [3, 0.5] })
    const lake = drawn.features.find(({ properties }) => properties.layer === 'water')
    expect(lake?.geometry.type === 'MultiPolygon' && lake.geometry.coordinates.map((polygon) => polygon.length)).toEqual([2])
  })
})

test.each([
  [{ emergency: 'fire_hydrant' }, 'hydrant'], [{ emergency: 'fire_hydrant', 'fire_hydrant:type': 'pond' }, 'pondHydrant'], [{ emergency: 'suction_point' }, 'suctionPoint'],
  [{ emergency: 'water_tank' }, 'tank'], [{ emergency: 'fire_water_pond' }, 'pond'], [{ man_made: 'storage_tank', content: 'water' }, 'tank'],
  [{ man_made: 'storage_tank', content: 'oil' }, undefined], [{ leisure: 'swimming_pool' }, 'pool'], [{ emergency: 'phone' }, undefined],
])('tags %j are a source of kind %s', (tags, kind) => {
  expect(sourceKindOf(tags)).toBe(kind)
})

test('ways close into rings whichever way they run; what does not close is left out', () => {
  expect(ringsFromWays([[1, 2, 3], [5, 4, 3], [5, 1], [8, 9]])).toEqual([[1, 2, 3, 4, 5, 1]])
  expect(ringsFromWays([[1, 2, 3, 1], [7, 8, 9, 7]])).toHaveLength(2)
  expect(ringsFromWays([[1, 2], [2, 1]])).toEqual([])
})
