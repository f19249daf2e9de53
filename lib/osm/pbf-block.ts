import { PbfReader } from 'pbf'
import type { ExtractBuilder } from './extract-builder'
import { isKeptKey, keepTag } from './kept-tags'
import type { OsmMember } from './osm-extract'

const LENGTH_DELIMITED = 2
const memberKinds = ['node', 'way', 'relation'] as const

/** Position just after the field's bytes, which must lie inside the message. */
function fieldEnd(pbf: PbfReader, limit: number): number {
  if (pbf.type !== LENGTH_DELIMITED) throw new Error('field is not length-delimited')
  const end = pbf.readVarint() + pbf.pos
  if (!(end <= limit)) throw new Error('field runs past its message')
  return end
}

/** Reads one packed or unpacked list of numbers, never more of them than there are bytes. */
function readNumbers(pbf: PbfReader, limit: number, read: (pbf: PbfReader) => number, into: number[]): void {
  if (pbf.type !== LENGTH_DELIMITED) {
    into.push(read(pbf))
    return
  }
  const end = fieldEnd(pbf, limit)
  while (pbf.pos < end) into.push(read(pbf))
  if (pbf.pos !== end) throw new Error('list of numbers does not end where it says')
}

const readUnsigned = (pbf: PbfReader): number => pbf.readVarint()
const readSigned = (pbf: PbfReader): number => pbf.readVarint(true)
const readZigzag = (pbf: PbfReader): number => pbf.readSVarint()

/**
 * Decodes one unpacked data block into the builder.
 *
 * Bad data throws; the caller says which block it was.
 *
 * @source the open PBF format description of the OpenStreetMap wiki (from memory): groups of nodes, dense
 *   nodes, ways and relations; strings in one table a block; coordinates offset + granularity × value, in
 *   billionths of a degree
 */
export function readPbfBlock(bytes: Uint8Array, builder: ExtractBuilder): void {
  const pbf = new PbfReader(bytes)
  const strings: string[] = []
  const groups: [number, number][] = []
  let granularity = 100, latOffset = 0, lonOffset = 0
  for (let field = pbf.nextField(); field !== 0; field = pbf.nextField()) {
    if (field === 1) readStringTable(pbf, bytes.length, strings)
    else if (field === 2) {
      const end = fieldEnd(pbf, bytes.length)
      groups.push([pbf.pos, end])
      pbf.pos = end
    } else if (field === 17) granularity = pbf.readVarint(true)
    else if (field === 19) latOffset = pbf.readVarint(true)
    else if (field === 20) lonOffset = pbf.readVarint(true)
    else pbf.skip(pbf.type)
  }
  if (pbf.pos !== bytes.length) throw new Error('block ends inside a field')
  if (!(granularity > 0)) throw new Error('granularity is not above 0')
  const block: Block = {
    strings,
    keptKey: strings.map(isKeptKey),
    latE7: (value) => Math.round((latOffset + granularity * value) / 100),
    lonE7: (value) => Math.round((lonOffset + granularity * value) / 100),
  }
  for (const [start, end] of groups) {
    pbf.pos = start
    pbf.type = 0
    readGroup(pbf, end, block, builder)
  }
}

type Block = {
  readonly strings: readonly string[]
  readonly keptKey: readonly boolean[]
  readonly latE7: (value: number) => number
  readonly lonE7: (value: number) => number
}

function readStringTable(pbf: PbfReader, limit: number, strings: string[]): void {
  const end = fieldEnd(pbf, limit)
  for (let field = pbf.nextField(end); field !== 0; field = pbf.nextField(end)) {
    if (field !== 1) {
      pbf.skip(pbf.type)
      continue
    }
    const start = pbf.pos
    const stringEnd = fieldEnd(pbf, end)
    pbf.pos = start
    strings.push(pbf.readString())
    pbf.pos = stringEnd
  }
}

function readGroup(pbf: PbfReader, groupEnd: number, block: Block, builder: ExtractBuilder): void {
  for (let field = pbf.nextField(groupEnd); field !== 0; field = pbf.nextField(groupEnd)) {
    if (field < 1 || field > 4) {
      pbf.skip(pbf.type)
      continue
    }
    const end = fieldEnd(pbf, groupEnd)
    if (field === 1) readPlainNode(pbf, end, block, builder)
    else if (field === 2) readDenseNodes(pbf, end, block, builder)
    else if (field === 3) readWay(pbf, end, block, builder)
    else readRelation(pbf, end, block, builder)
    pbf.pos = end
  }
}

function tagsOf(keys: readonly number[], values: readonly number[], { strings, keptKey }: Block): Record<string, string> {
  if (keys.length !== values.length) throw new Error('tags have keys without values')
  const tags: Record<string, string> = {}
  keys.forEach((key, i) => {
    const value = strings[values[i] ?? -1]
    const name = strings[key]
    if (value === undefined || name === undefined) throw new Error('tag is not in the string table')
    if (keptKey[key]) keepTag(tags, name, value)
  })
  return tags
}

function readPlainNode(pbf: PbfReader, end: number, block: Block, builder: ExtractBuilder): void {
  const keys: number[] = [], values: number[] = []
  let id = NaN, lat = NaN, lon = NaN
  for (let field = pbf.nextField(end); field !== 0; field = pbf.nextField(end)) {
    if (field === 1) id = pbf.readSVarint()
    else if (field === 2) readNumbers(pbf, end, readUnsigned, keys)
    else if (field === 3) readNumbers(pbf, end, readUnsigned, values)
    else if (field === 8) lat = pbf.readSVarint()
    else if (field === 9) lon = pbf.readSVarint()
    else pbf.skip(pbf.type)
  }
  builder.addNode(id, block.latE7(lat), block.lonE7(lon), keys.length > 0 ? tagsOf(keys, values, block) : undefined)
}

function readDenseNodes(pbf: PbfReader, end: number, block: Block, builder: ExtractBuilder): void {
  const ids: number[] = [], lats: number[] = [], lons: number[] = [], keysAndValues: number[] = []
  for (let field = pbf.nextField(end); field !== 0; field = pbf.nextField(end)) {
    if (field === 1) readNumbers(pbf, end, readZigzag, ids)
    else if (field === 8) readNumbers(pbf, end, readZigzag, lats)
    else if (field === 9) readNumbers(pbf, end, readZigzag, lons)
    else if (field === 10) readNumbers(pbf, end, readUnsigned, keysAndValues)
    else pbf.skip(pbf.type)
  }
  if (ids.length !== lats.length || ids.length !== lons.length) throw new Error('nodes have ids without places')
  const { strings, keptKey } = block
  let id = 0, lat = 0, lon = 0, at = 0
  for (let i = 0; i < ids.length; i++) {
    id += ids[i] ?? NaN
    lat += lats[i] ?? NaN
    lon += lons[i] ?? NaN
    let tags: Record<string, string> | undefined
    // Keys and values alternate; a 0 ends each node's list. The list is absent where no node has tags.
    while (at < keysAndValues.length) {
      const key = keysAndValues[at++] ?? 0
      if (key === 0) break
      const value = strings[keysAndValues[at++] ?? -1]
      const name = strings[key]
      if (value === undefined || name === undefined) throw new Error('tag is not in the string table')
      if (keptKey[key]) keepTag((tags ??= {}), name, value)
    }
    builder.addNode(id, block.latE7(lat), block.lonE7(lon), tags)
  }
}

function readWay(pbf: PbfReader, end: number, block: Block, builder: ExtractBuilder): void {
  const keys: number[] = [], values: number[] = [], refs: number[] = []
  let id = NaN
  for (let field = pbf.nextField(end); field !== 0; field = pbf.nextField(end)) {
    if (field === 1) id = pbf.readVarint(true)
    else if (field === 2) readNumbers(pbf, end, readUnsigned, keys)
    else if (field === 3) readNumbers(pbf, end, readUnsigned, values)
    else if (field === 8) readNumbers(pbf, end, readZigzag, refs)
    else pbf.skip(pbf.type)
  }
  let ref = 0
  for (let i = 0; i < refs.length; i++) refs[i] = ref += refs[i] ?? NaN
  builder.addWay(id, refs, tagsOf(keys, values, block))
}

function readRelation(pbf: PbfReader, end: number, block: Block, builder: ExtractBuilder): void {
  const keys: number[] = [], values: number[] = [], roles: number[] = [], refs: number[] = [], kinds: number[] = []
  let id = NaN
  for (let field = pbf.nextField(end); field !== 0; field = pbf.nextField(end)) {
    if (field === 1) id = pbf.readVarint(true)
    else if (field === 2) readNumbers(pbf, end, readUnsigned, keys)
    else if (field === 3) readNumbers(pbf, end, readUnsigned, values)
    else if (field === 8) readNumbers(pbf, end, readSigned, roles)
    else if (field === 9) readNumbers(pbf, end, readZigzag, refs)
    else if (field === 10) readNumbers(pbf, end, readUnsigned, kinds)
    else pbf.skip(pbf.type)
  }
  if (roles.length !== refs.length || kinds.length !== refs.length) throw new Error('members have no role or kind')
  let ref = 0
  const members = refs.map((delta, i): OsmMember => {
    ref += delta
    const kind = memberKinds[kinds[i] ?? -1]
    const role = block.strings[roles[i] ?? -1]
    if (kind === undefined || role === undefined) throw new Error('member has no known kind or role')
    return { kind, id: ref, role }
  })
  builder.addRelation(id, members, tagsOf(keys, values, block))
}
