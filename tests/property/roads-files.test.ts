import fc from 'fast-check'
import { expect, test } from 'vitest'
import { decodeDistrictMap, encodeDistrictMap, mapFeatures, readOsm } from '@/lib/osm'
import { buildRoadGraph, decodeRoadGraph, encodeRoadGraph, findRoute, oneToAll, weighGraph } from '@/lib/roads'
import { unpackers } from '../unit/osm/unpackers'
import { writePbf } from '../unit/osm/write-pbf'
import { extractOf, loaded, osmOf, placeOf, type Town } from '../unit/roads/town'

const town: Town = {
  grid: 'ABC\nDEF\nGHI',
  ways: [
    { id: 1, through: 'ABC', tags: { highway: 'tertiary', name: 'North Road' } }, { id: 2, through: 'DEF', tags: { highway: 'residential', maxheight: '4' } },
    { id: 3, through: 'ADG', tags: { highway: 'secondary', bridge: 'yes', maxweight: '20' } }, { id: 4, through: 'CF', tags: { highway: 'track' } },
    { id: 5, through: 'FI', tags: { highway: 'track' } }, { id: 6, through: 'GHI', tags: { highway: 'service' } }, { id: 7, through: 'BEHIFCB', tags: { natural: 'water', name: 'Mill Pond' } },
  ],
  nodeTags: { B: { emergency: 'fire_hydrant' }, H: { barrier: 'gate' } },
  restrictions: [{ from: 2, via: 4, to: 1, kind: 'no_left_turn' }, { from: 4, via: 'F', to: 5, kind: 'no_straight_on' }],
}

const changes = fc.array(fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }), byte: fc.nat(255) }), { minLength: 1, maxLength: 6 })
type Change = { at: number; byte: number }
const cut = fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined })

function changed(bytes: Uint8Array, list: readonly Change[], cutAt: number | undefined): Uint8Array {
  const copy = bytes.slice(0, cutAt === undefined ? bytes.length : Math.floor(cutAt * bytes.length))
  for (const { at, byte } of list) if (copy.length > 0) copy[Math.floor(at * copy.length)] = byte
  return copy
}

/** Makes the checksum right again, so that what lies behind it is tried too. Constants of FNV-1a. */
function withChecksum(blob: Uint8Array): Uint8Array {
  if (blob.length < 16) return blob
  const view = new DataView(blob.buffer, blob.byteOffset, blob.byteLength)
  view.setUint32(8, blob.length, true)
  let hash = 0x811c9dc5
  const end = 16 + ((blob.length - 16) & ~3)
  for (let i = 16; i < end; i += 4) hash = Math.imul(hash ^ view.getUint32(i, true), 0x01000193)
  for (let i = end; i < blob.length; i++) hash = Math.imul(hash ^ (blob[i] ?? 0), 0x01000193)
  hash ^= hash >>> 15
  view.setUint32(12, hash >>> 0, true)
  return blob
}

test('a changed graph blob is refused', async () => {
  const blob = encodeRoadGraph(buildRoadGraph(await extractOf(town)).graph)
  fc.assert(
    fc.property(changes, cut, (list, cutAt) => {
      const bytes = changed(blob, list, cutAt)
      if (Buffer.from(bytes).equals(Buffer.from(blob))) return
      expect(decodeRoadGraph(bytes)).toMatchObject({ code: 'road-graph-unreadable', severity: 'block' })
    }),
    { numRuns: 400, seed: 30 },
  )
})

test('a graph blob changed with a right checksum is refused or gives a graph that can be routed on', async () => {
  const blob = encodeRoadGraph(buildRoadGraph(await extractOf(town)).graph)
  let decodedCount = 0
  fc.assert(
    fc.property(changes, cut, (list, cutAt) => {
      const graph = decodeRoadGraph(withChecksum(changed(blob, list, cutAt)))
      if ('code' in graph) return
      decodedCount++
      const weights = weighGraph(graph, loaded)
      findRoute(graph, weights, placeOf(town, 'A'), placeOf(town, 'I'), [placeOf(town, 'F')], { reach_ft: 1e7 })
      oneToAll(graph, weights, placeOf(town, 'E'), 'to', 1e7)
    }),
    { numRuns: 1500, seed: 31 },
  )
  expect(decodedCount).toBeGreaterThan(0)
})

test('a changed map blob is refused, with a right checksum or gives a map', async () => {
  const blob = encodeDistrictMap(mapFeatures(await extractOf(town)))
  fc.assert(
    fc.property(changes, cut, fc.boolean(), (list, cutAt, isMended) => {
      const bytes = changed(blob, list, cutAt)
      const map = decodeDistrictMap(isMended ? withChecksum(bytes) : bytes)
      if (!isMended && !Buffer.from(bytes).equals(Buffer.from(blob))) expect('code' in map).toBe(true)
      if (!('code' in map)) expect(encodeDistrictMap(map).length).toBeGreaterThan(0)
    }),
    { numRuns: 800, seed: 32 },
  )
})

test('graph and map blobs come back as they went in', async () => {
  const extract = await extractOf(town)
  const { graph } = buildRoadGraph(extract)
  const again = decodeRoadGraph(encodeRoadGraph(graph))
  if ('code' in again) throw new Error(JSON.stringify(again))
  const plain = ({ segments: _segments, ...tables }: typeof graph) => tables
  expect(plain(again)).toEqual(plain(graph))
  expect(decodeDistrictMap(encodeDistrictMap(mapFeatures(extract)))).toEqual(mapFeatures(extract))
})

const pbf = writePbf(
  [...'ABCDEF'].map((letter, i) => ({ id: i + 1, ...placeOf(town, letter), ...(i === 2 ? { tags: { barrier: 'gate' } } : {}) })),
  [{ id: 1, refs: [1, 2, 3], tags: { highway: 'tertiary', name: 'North Road' } }, { id: 2, refs: [4, 5, 6], tags: { highway: 'track', maxweight: '3.5' } }],
  [{ id: 1, members: [{ kind: 1, id: 1, role: 'from' }, { kind: 0, id: 3, role: 'via' }, { kind: 1, id: 2, role: 'to' }], tags: { type: 'restriction', restriction: 'no_u_turn' } }],
  { isRaw: true },
)

test.each([['PBF', pbf], ['XML', new TextEncoder().encode(osmOf(town))]])('a changed %s is refused with one blocking issue or gives a graph', async (_, bytes) => {
  await fc.assert(
    fc.asyncProperty(changes, cut, async (list, cutAt) => {
      const found = await readOsm(changed(bytes, list, cutAt), unpackers)
      if ('code' in found) expect(found.severity).toBe('block')
      else expect('code' in decodeRoadGraph(encodeRoadGraph(buildRoadGraph(found).graph))).toBe(false)
    }),
    { numRuns: 1000, seed: 33 },
  )
})
