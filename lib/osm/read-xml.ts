import { SaxesParser } from 'saxes'
import { ExtractBuilder } from './extract-builder'
import { keepTag } from './kept-tags'
import { DEGREES_E7, type OsmExtract, type OsmMember } from './osm-extract'
import { osmFault } from './osm-fault'
import type { ReadContext } from './read-context'

const CHUNK_BYTES = 1 << 18

type PlainNames = { position: true; xmlns: false }
type Parser = SaxesParser<PlainNames>

/** A decimal number of the file, or NaN. */
const numberOf = (text: string | undefined): number => (text === undefined || text.trim() === '' ? NaN : Number(text))

/** Reads `.osm` XML in pieces; a document that ends early or is malformed stops the reading with its place. */
export async function readXml(bytes: Uint8Array, context: ReadContext): Promise<OsmExtract> {
  const builder = new ExtractBuilder('xml', context.limits)
  const parser = new SaxesParser<PlainNames>({ position: true, xmlns: false })
  const isEnded = { root: false }
  follow(parser, builder, isEnded)
  let at = 0
  parser.on('error', () => {
    throw osmFault('osm-damaged', { kind: 'xml', atByte: Math.min(at, bytes.length), line: parser.line })
  })
  // The declared encoding is UTF-8 in all such files; other bytes become replacement characters in names only.
  const decoder = new TextDecoder('utf-8')
  for (; at < bytes.length; at += CHUNK_BYTES) {
    await context.report(at / bytes.length)
    parser.write(decoder.decode(bytes.subarray(at, at + CHUNK_BYTES), { stream: true }))
  }
  if (!isEnded.root) throw osmFault('osm-truncated', { kind: 'xml', atByte: bytes.length, line: parser.line })
  parser.write(decoder.decode()).close()
  return builder.finish()
}

function follow(parser: Parser, builder: ExtractBuilder, isEnded: { root: boolean }): void {
  let depth = 0
  let id = NaN, lat = NaN, lon = NaN
  let tags: Record<string, string> = {}
  let refs: number[] = []
  let members: OsmMember[] = []

  parser.on('opentag', ({ name, attributes }) => {
    depth++
    if (depth === 1) {
      if (name !== 'osm') throw osmFault('osm-not-osm', { kind: 'xml', found: name.slice(0, 60) })
      builder.dataDate ??= attributes['timestamp']
    } else if (name === 'tag') {
      if (attributes['k'] !== undefined && attributes['v'] !== undefined) keepTag(tags, attributes['k'], attributes['v'])
    } else if (name === 'nd') refs.push(numberOf(attributes['ref']))
    else if (name === 'node' || name === 'way' || name === 'relation') {
      id = attributes['action'] === 'delete' ? NaN : numberOf(attributes['id'])
      lat = numberOf(attributes['lat'])
      lon = numberOf(attributes['lon'])
      tags = {}
      refs = []
      members = []
    } else if (name === 'member') {
      const kind = String(attributes['type'])
      if (kind === 'node' || kind === 'way' || kind === 'relation') {
        members.push({ kind, id: numberOf(attributes['ref']), role: attributes['role'] ?? '' })
      }
    } else if (name === 'bounds') {
      const [south, west, north, east] = ['minlat', 'minlon', 'maxlat', 'maxlon'].map((key) => numberOf(attributes[key]))
      if (south !== undefined && west !== undefined && north !== undefined && east !== undefined) builder.addBounds({ south, west, north, east })
    } else if (name === 'meta') builder.dataDate ??= attributes['osm_base']
  })
  parser.on('closetag', ({ name }) => {
    depth--
    if (depth === 0) isEnded.root = true
    if (depth !== 1 || Number.isNaN(id)) return
    if (name === 'node') builder.addNode(id, Math.round(lat * DEGREES_E7), Math.round(lon * DEGREES_E7), tags)
    else if (name === 'way') builder.addWay(id, refs, tags)
    else if (name === 'relation') builder.addRelation(id, members, tags)
  })
}
