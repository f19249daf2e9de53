import { deflateSync, gzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { gunzip, inflate } from '@/app/_worker/decompress'
import { importDistrictData, type ImportSummary } from '@/app/_worker/import-roads'
import { decodeDistrictMap } from '@/lib/osm'
import { decodeRoadGraph } from '@/lib/roads'
import { dataBytes } from '../../reference/roads/extracts'

test('a file becomes a graph, a map and a summary of what it holds', async () => {
  const steps: number[] = []
  const found = await importDistrictData(dataBytes('north-bayreuth.osm.gz'), 'north-bayreuth.osm.gz', { inflate, gunzip, onProgress: (doneShare) => void steps.push(doneShare) })
  if ('code' in found) throw new Error(JSON.stringify(found))
  expect('code' in decodeRoadGraph(found.graphBlob)).toBe(false)
  expect('code' in decodeDistrictMap(found.mapBlob)).toBe(false)
  // Counted outside: see tests/reference/roads/extract-counts.json. Paths and closed ways are no roads, so bridges are fewer here.
  expect(found.summary).toMatchObject<Partial<ImportSummary>>({
    fileKind: 'xml', dataDate: '2014-11-05T10:47:02Z', weightLimitCount: 6, heightLimitCount: 1, turnRestrictionCount: 40, hydrantCount: 19,
    bounds: { south: 49.9721, west: 11.4807, north: 50.047, east: 11.6053 },
  })
  expect(found.issues.map(({ code }) => code)).toEqual(['roads-restrictions-unused'])
  expect(steps.at(-1)).toBe(1)
  expect(steps).toEqual([...steps].sort((a, b) => a - b))
})

test('a bad file comes back as its one issue', async () => {
  const found = await importDistrictData(new TextEncoder().encode('name,lat,lon'), 'sources.csv', { inflate, gunzip })
  expect(found).toMatchObject({ code: 'osm-not-osm', severity: 'block' })
})

test('roads that no vehicle may use make no district', async () => {
  const xml = '<osm><node id="1" lat="1" lon="1"/><node id="2" lat="1" lon="1.01"/><way id="1"><nd ref="1"/><nd ref="2"/><tag k="highway" v="footway"/></way></osm>'
  expect(await importDistrictData(new TextEncoder().encode(xml), 'paths.osm', { inflate, gunzip })).toMatchObject({ code: 'roads-none-usable' })
})

test('unpacking gives the bytes back, and stops at its bound', async () => {
  const bytes = new TextEncoder().encode('water '.repeat(5000))
  expect(await inflate(new Uint8Array(deflateSync(bytes)), bytes.length)).toEqual(bytes)
  expect(await gunzip(new Uint8Array(gzipSync(bytes)), bytes.length)).toEqual(bytes)
  await expect(gunzip(new Uint8Array(gzipSync(bytes)), bytes.length - 1)).rejects.toThrow(RangeError)
  await expect(inflate(new Uint8Array([1, 2, 3, 4]), 100)).rejects.toThrow()
})
