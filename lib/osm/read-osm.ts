import type { Issue } from '../issue'
import { fileKindOf } from './file-kind'
import type { OsmExtract } from './osm-extract'
import { OsmFault, osmFault } from './osm-fault'
import { defaultOsmLimits, type OsmLimits } from './osm-limits'
import { readContextOf, type ReadContext, type ReadOptions } from './read-context'
import { readOverpass } from './read-overpass'
import { readPbf } from './read-pbf'
import { readXml } from './read-xml'

/**
 * Reads a district's map data: `.osm.pbf`, `.osm` XML or Overpass JSON, each also gzipped.
 * The kind is told by the bytes, never by the name, and nothing in the file is trusted.
 *
 * @param bytes   the whole file
 * @param options how to unpack, progress, abort, limits other than the stated ones
 * @returns the extract, or one blocking issue: `osm-not-osm`, `osm-unsupported` (format), `osm-truncated` and
 *   `osm-damaged` (kind, atByte, block or line), `osm-too-big` (what, allowedCount), `osm-no-roads`, `osm-aborted`
 */
export async function readOsm(bytes: Uint8Array, options: ReadOptions): Promise<OsmExtract | Issue> {
  const limits: OsmLimits = { ...defaultOsmLimits, ...options.limits }
  try {
    if (bytes.length > limits.maxFileBytes) throw osmFault('osm-too-big', { what: 'bytes', allowedCount: limits.maxFileBytes })
    return await readKind(await unpackedFile(bytes, options, limits), readContextOf(options, limits))
  } catch (error) {
    if (error instanceof OsmFault) return error.found
    throw error
  }
}

async function unpackedFile(bytes: Uint8Array, options: ReadOptions, limits: OsmLimits): Promise<Uint8Array> {
  if (fileKindOf(bytes).kind !== 'gzip') return bytes
  let data: Uint8Array
  try {
    data = await options.gunzip(bytes, limits.maxUnpackedBytes)
  } catch {
    throw osmFault('osm-damaged', { kind: 'gzip', atByte: 0 })
  }
  if (data.length > limits.maxUnpackedBytes) throw osmFault('osm-too-big', { what: 'unpacked bytes', allowedCount: limits.maxUnpackedBytes })
  return data
}

async function readKind(bytes: Uint8Array, context: ReadContext): Promise<OsmExtract> {
  const found = fileKindOf(bytes)
  switch (found.kind) {
    case 'pbf': return readPbf(bytes, context)
    case 'xml': return readXml(bytes, context)
    case 'json': return readOverpass(bytes, context)
    case 'gzip': throw osmFault('osm-unsupported', { format: 'gzip in gzip' })
    case 'other': throw osmFault('osm-unsupported', { format: found.format })
    case 'unknown': throw osmFault('osm-not-osm', { kind: 'unknown', found: bytes.length === 0 ? 'nothing' : 'bytes' })
  }
}
