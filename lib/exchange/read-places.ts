import type { Issue } from '../issue'
import { decodeText } from './decode-text'
import { ExchangeFault, exchangeFault } from './exchange-fault'
import { exchangeLimits } from './exchange-limits'
import { readCsv } from './read-csv'
import { readGeojson } from './read-geojson'
import { readGpx } from './read-gpx'
import { readKml } from './read-kml'
import type { FoundFile, Report } from './read-report'

export type ReadPlacesOptions = {
  /** Unpacks the KML files of a zip to at most so many bytes together, the outermost first; throws on damage. */
  readonly unzipKml: (bytes: Uint8Array, maxBytes: number) => Promise<readonly Uint8Array[]>
  readonly onProgress?: Report
}

/**
 * Reads a file of places: GeoJSON, KML, packed KML (KMZ), GPX or a table. The kind is told by the bytes, never by the
 * name, and nothing in the file is trusted.
 *
 * @param bytes the whole file
 * @returns what it holds, or the one blocking issue that stopped it
 */
export async function readPlaces(bytes: Uint8Array, { unzipKml, onProgress = () => undefined }: ReadPlacesOptions): Promise<FoundFile | Issue> {
  try {
    if (bytes.length > exchangeLimits.maxFileBytes) throw exchangeFault('exchange-too-large', { limit_MB: exchangeLimits.maxFileBytes / 1_000_000 })
    return isZip(bytes) ? await readPacked(await unpacked(bytes, unzipKml), onProgress) : await readKind(bytes, onProgress)
  } catch (error) {
    if (error instanceof ExchangeFault) return error.found
    throw error
  }
}

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04

async function unpacked(bytes: Uint8Array, unzipKml: ReadPlacesOptions['unzipKml']): Promise<readonly Uint8Array[]> {
  let inside: readonly Uint8Array[]
  try {
    inside = await unzipKml(bytes, exchangeLimits.maxUnpackedBytes)
  } catch {
    throw exchangeFault('exchange-zip-damaged')
  }
  if (inside.length === 0) throw exchangeFault('exchange-zip-without')
  return inside
}

/** All files of a packed one as one: a map program keeps each of its layers in a file of its own, and links them. */
async function readPacked(inside: readonly Uint8Array[], report: Report): Promise<FoundFile> {
  const [only, ...others] = inside.filter((bytes) => new TextDecoder('latin1').decode(bytes).includes('Placemark'))
  if (!only) throw exchangeFault('exchange-empty')
  let whole = await readKml(only, report)
  for (const bytes of others) {
    const next = await readKml(bytes, report)
    const before = whole.features.at(-1)?.at ?? 0
    whole = {
      ...whole,
      features: [...whole.features, ...next.features.map((feature) => ({ ...feature, at: feature.at + before }))],
      columns: [...new Set([...whole.columns, ...next.columns])], notes: [...whole.notes, ...next.notes],
    }
    if (whole.features.length > exchangeLimits.maxFeatures) throw exchangeFault('exchange-too-many', { limit: exchangeLimits.maxFeatures })
  }
  return whole
}

async function readKind(bytes: Uint8Array, report: Report): Promise<FoundFile> {
  const head = decodedHead(bytes)
  if (head.startsWith('<')) return await (/<(?:\w+:)?gpx[\s>]/.test(head) ? readGpx(bytes, report) : readKml(bytes, report))
  await report(0)
  if (head.startsWith('{') || head.startsWith('[')) return readGeojson(decodeText(bytes, { mayGuess: false }).text)
  if (head === '' || /^(?:%PDF|\u0089PNG|\u001f\u008b|\u00d0\u00cf)/.test(head)) throw exchangeFault('exchange-unknown-format')
  return readCsv(bytes)
}

/** The first characters, for telling the kind: enough of any encoding that has ASCII in it. */
function decodedHead(bytes: Uint8Array): string {
  const isWide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)
  const text = String.fromCharCode(...bytes.subarray(0, 4096))
  return (isWide ? text.replaceAll('\u0000', '') : text).replace(/^(?:\u00ef\u00bb\u00bf|\u00ff\u00fe|\u00fe\u00ff)/, '').trimStart()
}
