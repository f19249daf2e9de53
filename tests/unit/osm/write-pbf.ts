import { deflateSync } from 'node:zlib'
import { PbfWriter } from 'pbf'

export type PbfNode = { id: number; lat: number; lon: number; tags?: Record<string, string> }
export type PbfWay = { id: number; refs: number[]; tags: Record<string, string> }
export type PbfRelation = { id: number; members: { kind: 0 | 1 | 2; id: number; role: string }[]; tags: Record<string, string> }

export type PbfOptions = {
  isRaw?: boolean
  isDense?: boolean
  /** Replaces the true unpacked size. */
  rawSize?: number
  features?: string[]
  /** Replaces the packed data of the data block. */
  packed?: Uint8Array
  /** Field number under which the data block is packed, 3 is zlib. */
  packing?: number
  timestamp_s?: number
}

/** A small `.osm.pbf`, written from the format's description, for tests of its reader. */
export function writePbf(nodes: readonly PbfNode[], ways: readonly PbfWay[], relations: readonly PbfRelation[] = [], options: PbfOptions = {}): Uint8Array {
  const header = new PbfWriter()
  for (const feature of options.features ?? ['OsmSchema-V0.6', 'DenseNodes']) header.writeStringField(4, feature)
  if (options.timestamp_s !== undefined) header.writeVarintField(32, options.timestamp_s)
  return joined([fileBlock('OSMHeader', header.finish(), {}), fileBlock('OSMData', dataBlock(nodes, ways, relations, options.isDense ?? true), options)])
}

export function joined(parts: readonly Uint8Array[]): Uint8Array {
  return new Uint8Array(Buffer.concat(parts))
}

function fileBlock(type: string, data: Uint8Array, options: PbfOptions): Uint8Array {
  const blob = new PbfWriter()
  if (options.isRaw) blob.writeBytesField(1, data)
  else {
    blob.writeVarintField(2, options.rawSize ?? data.length)
    blob.writeBytesField(options.packing ?? 3, options.packed ?? new Uint8Array(deflateSync(data)))
  }
  const blobBytes = blob.finish()
  const header = new PbfWriter()
  header.writeStringField(1, type)
  header.writeVarintField(3, blobBytes.length)
  const headerBytes = header.finish()
  const length = new Uint8Array(4)
  new DataView(length.buffer).setUint32(0, headerBytes.length)
  return joined([length, headerBytes, blobBytes])
}

function dataBlock(nodes: readonly PbfNode[], ways: readonly PbfWay[], relations: readonly PbfRelation[], isDense: boolean): Uint8Array {
  const strings = ['']
  const stringOf = (text: string): number => {
    const known = strings.indexOf(text)
    return known >= 0 ? known : strings.push(text) - 1
  }
  const deltas = (values: readonly number[]): number[] => values.map((value, i) => value - (values[i - 1] ?? 0))
  const e7 = (degrees: number): number => Math.round(degrees * 1e7)
  const keysOf = (tags: Record<string, string>): number[] => Object.keys(tags).map(stringOf)
  const valuesOf = (tags: Record<string, string>): number[] => Object.values(tags).map(stringOf)

  const group = new PbfWriter()
  if (isDense) {
    const dense = new PbfWriter()
    dense.writePackedSVarint(1, deltas(nodes.map(({ id }) => id)))
    dense.writePackedSVarint(8, deltas(nodes.map(({ lat }) => e7(lat))))
    dense.writePackedSVarint(9, deltas(nodes.map(({ lon }) => e7(lon))))
    const keysAndValues = nodes.flatMap(({ tags = {} }) => [...Object.entries(tags).flatMap(([key, value]) => [stringOf(key), stringOf(value)]), 0])
    dense.writePackedVarint(10, keysAndValues)
    group.writeBytesField(2, dense.finish())
  } else {
    for (const { id, lat, lon, tags = {} } of nodes) {
      const node = new PbfWriter()
      node.writeTag(1, 0)
      node.writeSVarint(id)
      node.writePackedVarint(2, keysOf(tags))
      node.writePackedVarint(3, valuesOf(tags))
      node.writeTag(8, 0)
      node.writeSVarint(e7(lat))
      node.writeTag(9, 0)
      node.writeSVarint(e7(lon))
      group.writeBytesField(1, node.finish())
    }
  }
  for (const { id, refs, tags } of ways) {
    const way = new PbfWriter()
    way.writeVarintField(1, id)
    way.writePackedVarint(2, keysOf(tags))
    way.writePackedVarint(3, valuesOf(tags))
    way.writePackedSVarint(8, deltas(refs))
    group.writeBytesField(3, way.finish())
  }
  for (const { id, members, tags } of relations) {
    const relation = new PbfWriter()
    relation.writeVarintField(1, id)
    relation.writePackedVarint(2, keysOf(tags))
    relation.writePackedVarint(3, valuesOf(tags))
    relation.writePackedVarint(8, members.map(({ role }) => stringOf(role)))
    relation.writePackedSVarint(9, deltas(members.map((member) => member.id)))
    relation.writePackedVarint(10, members.map(({ kind }) => kind))
    group.writeBytesField(4, relation.finish())
  }
  const table = new PbfWriter()
  for (const text of strings) table.writeStringField(1, text)
  const block = new PbfWriter()
  block.writeBytesField(1, table.finish())
  block.writeBytesField(2, group.finish())
  return block.finish()
}
