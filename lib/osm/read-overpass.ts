import { ExtractBuilder } from './extract-builder'
import { keepTag } from './kept-tags'
import { DEGREES_E7, type OsmExtract, type OsmMember } from './osm-extract'
import { osmFault } from './osm-fault'
import type { ReadContext } from './read-context'

/** A JavaScript string can hold about half a thousand million characters; stay well below. */
const LONGEST_JSON = 300_000_000

type Json = Readonly<Record<string, unknown>>

const isObject = (value: unknown): value is Json => typeof value === 'object' && value !== null && !Array.isArray(value)
const numberIn = (object: Json, key: string): number => {
  const value = object[key]
  return typeof value === 'number' ? value : NaN
}
const listIn = (object: Json, key: string): readonly unknown[] => {
  const value = object[key]
  return Array.isArray(value) ? value : []
}

/**
 * Reads JSON as an Overpass server gives it, with node elements (`out body`) or with the
 * shape inside each way (`out geom`).
 */
export async function readOverpass(bytes: Uint8Array, context: ReadContext): Promise<OsmExtract> {
  if (bytes.length > LONGEST_JSON) throw osmFault('osm-too-big', { what: 'bytes of JSON', allowedCount: LONGEST_JSON })
  await context.report(0)
  const document = parsed(bytes)
  await context.report(0.3)
  if (!isObject(document) || !Array.isArray(document['elements'])) {
    const found = isObject(document) && typeof document['type'] === 'string' ? document['type'] : 'json'
    throw osmFault('osm-not-osm', { kind: 'json', found: found.slice(0, 60) })
  }
  const builder = new ExtractBuilder('overpass-json', context.limits)
  const stamp = isObject(document['osm3s']) ? document['osm3s']['timestamp_osm_base'] : undefined
  if (typeof stamp === 'string') builder.dataDate = stamp
  const elements: readonly unknown[] = document['elements']
  const places = new PlacesByShape(builder)
  for (let i = 0; i < elements.length; i++) {
    if ((i & 0x3fff) === 0) await context.report(0.3 + (0.7 * i) / elements.length)
    const element = elements[i]
    if (isObject(element)) addElement(element, builder, places)
  }
  return builder.finish()
}

function parsed(bytes: Uint8Array): unknown {
  const text = new TextDecoder('utf-8').decode(bytes)
  try {
    const document: unknown = JSON.parse(text)
    return document
  } catch {
    // A document cut short ends without its last bracket; anything else is damage inside.
    const code = /[}\]]\s*$/.test(text) ? 'osm-damaged' : 'osm-truncated'
    throw osmFault(code, { kind: 'overpass-json', atByte: bytes.length })
  }
}

function addElement(element: Json, builder: ExtractBuilder, places: PlacesByShape): void {
  const id = numberIn(element, 'id')
  const tags: Record<string, string> = {}
  if (isObject(element['tags'])) {
    for (const [key, value] of Object.entries(element['tags'])) if (typeof value === 'string') keepTag(tags, key, value)
  }
  if (element['type'] === 'node') {
    builder.addNode(id, Math.round(numberIn(element, 'lat') * DEGREES_E7), Math.round(numberIn(element, 'lon') * DEGREES_E7), tags)
  } else if (element['type'] === 'way') {
    const ids = listIn(element, 'nodes').map((value) => (typeof value === 'number' ? value : NaN))
    builder.addWay(id, places.idsOf(ids, listIn(element, 'geometry')), tags)
  } else if (element['type'] === 'relation') {
    const members: OsmMember[] = []
    for (const member of listIn(element, 'members')) {
      if (!isObject(member)) continue
      const kind = member['type']
      if (kind !== 'node' && kind !== 'way' && kind !== 'relation') continue
      members.push({ kind, id: numberIn(member, 'ref'), role: typeof member['role'] === 'string' ? member['role'] : '' })
    }
    builder.addRelation(id, members, tags)
  }
}

/** Nodes that a way brings inside its own shape; where ids are left out, one place is one node. */
class PlacesByShape {
  private readonly idOfPlace = new Map<string, number>()
  private readonly given = new Set<number>()

  constructor(private readonly builder: ExtractBuilder) {}

  idsOf(ids: readonly number[], geometry: readonly unknown[]): readonly number[] {
    if (geometry.length === 0) return ids
    return geometry.map((point, i) => {
      const known = ids[i]
      if (!isObject(point)) return known ?? NaN
      const latE7 = Math.round(numberIn(point, 'lat') * DEGREES_E7)
      const lonE7 = Math.round(numberIn(point, 'lon') * DEGREES_E7)
      const id = known ?? this.idOfCoordinates(latE7, lonE7)
      if (!this.given.has(id)) {
        this.given.add(id)
        this.builder.addNode(id, latE7, lonE7)
      }
      return id
    })
  }

  private idOfCoordinates(latE7: number, lonE7: number): number {
    const place = `${latE7} ${lonE7}`
    // Far below any id an editor gives to unsaved nodes.
    const id = this.idOfPlace.get(place) ?? -1e12 - this.idOfPlace.size
    this.idOfPlace.set(place, id)
    return id
  }
}
