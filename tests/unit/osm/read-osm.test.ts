import { gzipSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import type { Issue } from '@/lib/issue'
import { readOsm, type OsmExtract, type ReadOptions } from '@/lib/osm'
import { unpackers } from './unpackers'
import { joined, writePbf, type PbfNode, type PbfOptions, type PbfRelation, type PbfWay } from './write-pbf'

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)
const read = (bytes: Uint8Array, options: Partial<ReadOptions> = {}): Promise<OsmExtract | Issue> => readOsm(bytes, { ...unpackers, ...options })

async function extractOf(bytes: Uint8Array, options: Partial<ReadOptions> = {}): Promise<OsmExtract> {
  const found = await read(bytes, options)
  if ('code' in found) throw new Error(JSON.stringify(found))
  return found
}
async function issueOf(bytes: Uint8Array, options: Partial<ReadOptions> = {}): Promise<Issue> {
  const found = await read(bytes, options)
  if (!('code' in found)) throw new Error('was read')
  return found
}

const nodes: PbfNode[] = [
  { id: 30, lat: 50.0000003, lon: 11.5 },
  { id: 10, lat: 50.01, lon: 11.5123456, tags: { barrier: 'gate', note: 'dropped' } },
  { id: 20, lat: 50.02, lon: 11.6, tags: { natural: 'tree' } },
]
const ways: PbfWay[] = [
  { id: 7, refs: [30, 10, 20], tags: { highway: 'tertiary', maxweight: '3.5', source: 'dropped' } },
  { id: 5, refs: [10, 99], tags: { highway: 'track' } },
  { id: 6, refs: [10, 20, 30, 10], tags: {} },
]
const relations: PbfRelation[] = [
  { id: 1, members: [{ kind: 1, id: 7, role: 'from' }, { kind: 0, id: 10, role: 'via' }, { kind: 1, id: 5, role: 'to' }], tags: { type: 'restriction', restriction: 'no_left_turn' } },
  { id: 2, members: [{ kind: 1, id: 6, role: 'outer' }], tags: { type: 'multipolygon', natural: 'water' } },
  { id: 3, members: [{ kind: 1, id: 6, role: '' }], tags: { type: 'route' } },
]
const tagsXml = (tags: Record<string, string> = {}): string => Object.entries(tags).map(([k, v]) => `<tag k="${k}" v="${v}"/>`).join('')
const kinds = ['node', 'way', 'relation'] as const
const xml = `<?xml version="1.0" encoding="UTF-8"?>\n<osm version="0.6">
${nodes.map(({ id, lat, lon, tags }) => `<node id="${id}" lat="${lat}" lon="${lon}">${tagsXml(tags)}</node>`).join('\n')}
${ways.map(({ id, refs, tags }) => `<way id="${id}">${refs.map((ref) => `<nd ref="${ref}"/>`).join('')}${tagsXml(tags)}</way>`).join('\n')}
${relations.map(({ id, members, tags }) => `<relation id="${id}">${members.map((m) => `<member type="${kinds[m.kind]}" ref="${m.id}" role="${m.role}"/>`).join('')}${tagsXml(tags)}</relation>`).join('\n')}
</osm>`
const json = JSON.stringify({
  version: 0.6,
  osm3s: { timestamp_osm_base: '2020-01-02T03:04:05Z' },
  elements: [
    ...nodes.map((node) => ({ type: 'node', ...node })),
    ...ways.map(({ id, refs, tags }) => ({ type: 'way', id, nodes: refs, tags })),
    ...relations.map(({ id, members, tags }) => ({ type: 'relation', id, tags, members: members.map((m) => ({ type: kinds[m.kind], ref: m.id, role: m.role })) })),
  ],
})
const tablesOf = ({ nodeId, nodeLatE7, nodeLonE7, taggedNode, nodeTags, wayId, wayTags, wayStart, wayNode, relations: kept, bounds }: OsmExtract) =>
  ({ nodeId, nodeLatE7, nodeLonE7, taggedNode, nodeTags, wayId, wayTags, wayStart, wayNode, kept, bounds })
const pbf = (options?: PbfOptions): Uint8Array => writePbf(nodes, ways, relations, options)

describe('every kind of file gives the same tables', () => {
  test('ids are sorted, coordinates exact to the seventh decimal, only tags that matter kept', async () => {
    const found = await extractOf(bytesOf(xml))
    expect([...found.nodeId]).toEqual([10, 20, 30])
    expect([...found.nodeLatE7]).toEqual([500100000, 500200000, 500000003])
    expect([...found.nodeLonE7]).toEqual([115123456, 116000000, 115000000])
    expect([...found.taggedNode]).toEqual([0])
    expect(found.nodeTags).toEqual([{ barrier: 'gate' }])
    expect([...found.wayId]).toEqual([5, 6, 7])
    expect(found.wayTags).toEqual([{ highway: 'track' }, {}, { highway: 'tertiary', maxweight: '3.5' }])
    expect([...found.wayNode]).toEqual([0, 0xffffffff, 0, 1, 2, 0, 2, 0, 1])
    expect(found.relations.map(({ id }) => id)).toEqual([1, 2])
    expect(found.counts).toEqual({ nodeCount: 3, wayCount: 3, relationCount: 3, highwayCount: 2, restrictionCount: 1 })
    expect(found.bounds).toEqual({ south: 50.0000003, north: 50.02, west: 11.5, east: 11.6 })
    expect(found.issues).toEqual([{ code: 'osm-missing-nodes', severity: 'note', subjectIds: [], values: { nodeCount: 1, cutRoadCount: 1 } }])
  })

  test.each([
    ['Overpass JSON', bytesOf(json)],
    ['XML in gzip', new Uint8Array(gzipSync(xml))],
    ['PBF with dense nodes', pbf()],
    ['PBF with plain nodes', pbf({ isDense: false })],
    ['PBF with unpacked blocks', pbf({ isRaw: true })],
    ['XML with a byte order mark', joined([Uint8Array.of(0xef, 0xbb, 0xbf), bytesOf(xml)])],
  ])('%s equals XML', async (_, bytes) => {
    expect(tablesOf(await extractOf(bytes))).toEqual(tablesOf(await extractOf(bytesOf(xml))))
  })

  test('the date of the data is what the file states', async () => {
    expect((await extractOf(bytesOf(json))).dataDate).toBe('2020-01-02T03:04:05Z')
    expect((await extractOf(bytesOf(xml))).dataDate).toBeUndefined()
    // 1,000,000,000 s after 1970 is a well-known instant of the civil calendar.
    expect((await extractOf(pbf({ timestamp_s: 1_000_000_000 }))).dataDate).toBe('2001-09-09T01:46:40Z')
  })

  test('JSON with the shape inside each way makes one node of one place', async () => {
    const geometry = [{ lat: 50, lon: 11 }, { lat: 50.1, lon: 11 }]
    const found = await extractOf(bytesOf(JSON.stringify({
      elements: [
        { type: 'way', id: 1, geometry, tags: { highway: 'residential' } },
        { type: 'way', id: 2, geometry: [geometry[1], null, { lat: 50.2, lon: 11 }], tags: { highway: 'residential' } },
      ],
    })))
    expect(found.nodeId.length).toBe(3)
    expect(found.wayNode[1]).toBe(found.wayNode[2])
    expect(found.wayNode[3]).toBe(0xffffffff)
  })

  test('of two elements with one id the later stands', async () => {
    const twice = xml.replace('</osm>', '<node id="10" lat="50.5" lon="11.5"/></osm>')
    const found = await extractOf(bytesOf(twice))
    expect(found.nodeLatE7[0]).toBe(505000000)
    expect(found.issues.map(({ code }) => code)).toContain('osm-duplicates')
  })
})

describe('a bad file is refused with one reason and its place', () => {
  test.each([
    ['nothing', new Uint8Array(0)],
    ['text', bytesOf('name,lat,lon\npond,50,11\n')],
    ['another XML', bytesOf('<?xml version="1.0"?><gpx><trk/></gpx>')],
    ['GeoJSON', bytesOf('{"type":"FeatureCollection","features":[]}')],
    ['a JSON list', bytesOf('[1,2,3]')],
  ])('%s is not map data', async (_, bytes) => {
    expect((await issueOf(bytes)).code).toBe('osm-not-osm')
  })

  test('the root of another XML is named', async () => {
    expect((await issueOf(bytesOf('<gpx/>'))).values).toEqual({ kind: 'xml', found: 'gpx' })
  })

  test.each([
    ['bzip2', bytesOf('BZh91AY')], ['zip', Uint8Array.of(0x50, 0x4b, 3, 4, 0)], ['o5m', Uint8Array.of(0xff, 0xe0, 4, 0x6f, 0x35, 0x6d)],
  ])('%s is known and not read', async (format, bytes) => {
    expect(await issueOf(bytes)).toMatchObject({ code: 'osm-unsupported', values: { format } })
  })

  test('a PBF block packed otherwise, and a feature that is not known, are named', async () => {
    expect(await issueOf(pbf({ packing: 7 }))).toMatchObject({ code: 'osm-unsupported', values: { format: 'zstandard' } })
    expect(await issueOf(pbf({ features: ['HistoricalInformation'] }))).toMatchObject({ code: 'osm-unsupported', values: { format: 'HistoricalInformation' } })
  })

  test('a PBF cut anywhere says at which block it ends', async () => {
    const whole = pbf()
    const secondBlock = 4 + new DataView(whole.buffer, whole.byteOffset).getUint32(0)
    for (const length of [whole.length - 1, whole.length - 60]) {
      const found = await issueOf(whole.slice(0, length))
      expect(found).toMatchObject({ code: 'osm-truncated', values: { kind: 'pbf', block: 1 } })
      expect(Number(found.values['atByte'])).toBeGreaterThan(secondBlock)
    }
  })

  test('XML and JSON that end early are truncated', async () => {
    expect(await issueOf(bytesOf(xml.slice(0, 300)))).toMatchObject({ code: 'osm-truncated', values: { kind: 'xml', atByte: 300 } })
    expect(await issueOf(bytesOf(json.slice(0, -20)))).toMatchObject({ code: 'osm-truncated', values: { kind: 'overpass-json' } })
  })

  test('malformed XML is damaged, with its line', async () => {
    const broken = xml.replace('<way id="7">', '<way id=7>')
    expect(await issueOf(bytesOf(broken))).toMatchObject({ code: 'osm-damaged', values: { kind: 'xml', line: 6 } })
  })

  test('a gzip that cannot be unpacked is damaged', async () => {
    const packed = new Uint8Array(gzipSync(xml))
    expect(await issueOf(packed.slice(0, -30))).toMatchObject({ code: 'osm-damaged', values: { kind: 'gzip' } })
  })

  test('a block that unpacks to more than it says is damaged, and no more than it says is unpacked', async () => {
    const found = await issueOf(pbf({ rawSize: 10 }))
    expect(found).toMatchObject({ code: 'osm-damaged', values: { kind: 'pbf', block: 1 } })
    expect(await issueOf(pbf({ rawSize: 1_000_000_000 }))).toMatchObject({ code: 'osm-damaged' })
  })

  test('limits hold: bytes, unpacked bytes, nodes, ways', async () => {
    const limited = (limits: ReadOptions['limits'], bytes = bytesOf(xml)) => issueOf(bytes, { limits })
    expect(await limited({ maxFileBytes: 100 })).toMatchObject({ code: 'osm-too-big', values: { what: 'bytes', allowedCount: 100 } })
    expect(await limited({ maxNodes: 2 })).toMatchObject({ code: 'osm-too-big', values: { what: 'nodes', allowedCount: 2 } })
    expect(await limited({ maxWays: 2 })).toMatchObject({ code: 'osm-too-big', values: { what: 'ways' } })
    expect(await limited({ maxUnpackedBytes: 50 }, pbf())).toMatchObject({ code: 'osm-too-big', values: { what: 'unpacked bytes' } })
    expect((await issueOf(new Uint8Array(gzipSync(Buffer.alloc(5_000_000, 32))), { limits: { maxUnpackedBytes: 10_000 } })).severity).toBe('block')
  })

  test('map data without a road that can be drawn is refused', async () => {
    const noRoads = bytesOf(xml.replaceAll('highway', 'power'))
    expect(await issueOf(noRoads)).toMatchObject({ code: 'osm-no-roads', values: { kind: 'xml', wayCount: 3 } })
  })

  test('entities of a document are not followed', async () => {
    const bomb = `<?xml version="1.0"?><!DOCTYPE osm [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><osm><way id="1"><tag k="name" v="&b;"/></way></osm>`
    expect((await issueOf(bytesOf(bomb))).code).toBe('osm-damaged')
  })

  test('reading stops when it is told to', async () => {
    const signal = { aborted: false }
    const found = await issueOf(pbf(), { signal, onProgress: (doneShare) => void (signal.aborted = doneShare > 0) })
    expect(found.code).toBe('osm-aborted')
  })

  test('progress never goes back', async () => {
    const seen: number[] = []
    await extractOf(pbf(), { onProgress: (doneShare) => void seen.push(doneShare) })
    expect(seen).toEqual([...seen].sort((a, b) => a - b))
    expect(seen.length).toBe(2)
  })
})
