import { PbfReader } from 'pbf'
import { dayFromDays } from '../calendar'
import { ExtractBuilder } from './extract-builder'
import type { OsmExtract } from './osm-extract'
import { OsmFault, osmFault } from './osm-fault'
import type { ReadContext } from './read-context'
import { readPbfBlock } from './pbf-block'

/** Limits of the format itself: a header under 64 KiB, a block under 32 MiB unpacked. */
const LONGEST_HEADER = 64 * 1024
const LONGEST_BLOCK = 32 * 1024 * 1024

const knownFeatures = new Set(['OsmSchema-V0.6', 'DenseNodes', 'LocationsOnWays'])
const packings: Readonly<Record<number, string>> = { 4: 'lzma', 5: 'bzip2', 6: 'lz4', 7: 'zstandard' }

/** Reads a `.osm.pbf`, block by block; a block that is cut off or damaged stops the reading with its place. */
export async function readPbf(bytes: Uint8Array, context: ReadContext): Promise<OsmExtract> {
  const builder = new ExtractBuilder('pbf', context.limits)
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let at = 0
  let unpackedBytes = 0
  for (let block = 0; at < bytes.length; block++) {
    await context.report(at / bytes.length)
    const place = { kind: 'pbf', atByte: at, block }
    if (at + 4 > bytes.length) throw osmFault('osm-truncated', place)
    const headerLength = view.getUint32(at)
    if (headerLength === 0 || headerLength > LONGEST_HEADER) throw osmFault('osm-damaged', place)
    const headerEnd = at + 4 + headerLength
    if (headerEnd > bytes.length) throw osmFault('osm-truncated', place)
    const { type, dataBytes } = guarded(place, () => readBlobHeader(bytes.subarray(at + 4, headerEnd)))
    const blobEnd = headerEnd + dataBytes
    if (!(dataBytes >= 0 && dataBytes <= LONGEST_BLOCK)) throw osmFault('osm-damaged', place)
    if (blobEnd > bytes.length) throw osmFault('osm-truncated', place)
    if (block === 0 && type !== 'OSMHeader') throw osmFault('osm-damaged', place)
    if (type === 'OSMHeader' || type === 'OSMData') {
      const data = await unpack(bytes.subarray(headerEnd, blobEnd), place, context)
      unpackedBytes += data.length
      if (unpackedBytes > context.limits.maxUnpackedBytes) {
        throw osmFault('osm-too-big', { what: 'unpacked bytes', allowedCount: context.limits.maxUnpackedBytes })
      }
      if (type === 'OSMHeader') guarded(place, () => readHeaderBlock(data, builder))
      else guarded(place, () => readPbfBlock(data, builder))
    }
    at = blobEnd
  }
  return builder.finish()
}

type Place = { readonly kind: string; readonly atByte: number; readonly block: number }

/** Anything a decoder throws means damaged data at this place. */
function guarded<T>(place: Place, read: () => T): T {
  try {
    return read()
  } catch (error) {
    if (error instanceof OsmFault) throw error
    throw osmFault('osm-damaged', place)
  }
}

function readBlobHeader(bytes: Uint8Array): { type: string; dataBytes: number } {
  const pbf = new PbfReader(bytes)
  let type = '', dataBytes = -1
  for (let field = pbf.nextField(); field !== 0; field = pbf.nextField()) {
    if (field === 1) type = pbf.readString()
    else if (field === 3) dataBytes = pbf.readVarint(true)
    else pbf.skip(pbf.type)
  }
  if (pbf.pos !== bytes.length) throw new Error('header ends inside a field')
  return { type, dataBytes }
}

async function unpack(blob: Uint8Array, place: Place, context: ReadContext): Promise<Uint8Array> {
  const { raw, rawBytes, packed, packing } = guarded(place, () => readBlob(blob))
  if (raw) return raw
  if (packing !== undefined) throw osmFault('osm-unsupported', { format: packing })
  if (!packed || !(rawBytes >= 0 && rawBytes <= LONGEST_BLOCK)) throw osmFault('osm-damaged', place)
  let data: Uint8Array
  try {
    // One byte more than promised is allowed, so that a lie is seen and not cut off in silence.
    data = await context.inflate(packed, rawBytes + 1)
  } catch {
    throw osmFault('osm-damaged', place)
  }
  if (data.length !== rawBytes) throw osmFault('osm-damaged', place)
  return data
}

type Blob = { raw?: Uint8Array; rawBytes: number; packed?: Uint8Array; packing?: string }

function readBlob(bytes: Uint8Array): Blob {
  const pbf = new PbfReader(bytes)
  const blob: Blob = { rawBytes: -1 }
  for (let field = pbf.nextField(); field !== 0; field = pbf.nextField()) {
    if (field === 1) blob.raw = pbf.readBytes()
    else if (field === 2) blob.rawBytes = pbf.readVarint(true)
    else if (field === 3) blob.packed = pbf.readBytes()
    else {
      if (packings[field] !== undefined) blob.packing = packings[field]
      pbf.skip(pbf.type)
    }
  }
  if (pbf.pos !== bytes.length) throw new Error('blob ends inside a field')
  return blob
}

function readHeaderBlock(bytes: Uint8Array, builder: ExtractBuilder): void {
  const pbf = new PbfReader(bytes)
  for (let field = pbf.nextField(); field !== 0; field = pbf.nextField()) {
    if (field === 1) readBounds(pbf, builder)
    else if (field === 4) {
      const feature = pbf.readString()
      if (!knownFeatures.has(feature)) throw osmFault('osm-unsupported', { format: feature.slice(0, 60) })
    } else if (field === 32) builder.dataDate = isoFromSeconds(pbf.readVarint(true))
    else pbf.skip(pbf.type)
  }
}

function readBounds(pbf: PbfReader, builder: ExtractBuilder): void {
  const end = pbf.readVarint() + pbf.pos
  let west = NaN, east = NaN, north = NaN, south = NaN
  for (let field = pbf.nextField(end); field !== 0; field = pbf.nextField(end)) {
    const degrees = pbf.readSVarint() / 1e9
    if (field === 1) west = degrees
    else if (field === 2) east = degrees
    else if (field === 3) north = degrees
    else if (field === 4) south = degrees
  }
  builder.addBounds({ south, west, north, east })
}

/** ISO 8601 date and time of seconds since 1970, or undefined outside the years 2000 to 2200. */
function isoFromSeconds(seconds: number): string | undefined {
  if (!(seconds >= 946_684_800 && seconds < 7_258_118_400)) return undefined
  const days = Math.floor(seconds / 86_400)
  const { year, month, day } = dayFromDays(days)
  const rest = seconds - days * 86_400
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${year}-${two(month)}-${two(day)}T${two(Math.floor(rest / 3600))}:${two(Math.floor((rest % 3600) / 60))}:${two(rest % 60)}Z`
}
