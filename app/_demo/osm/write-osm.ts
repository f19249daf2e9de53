import { demoBounds } from '../frame'
import type { Tags } from '../roads/network'
import type { OsmStore } from './osm-store'

const NOTE =
  'An invented place: made by the demo generator of Millrace, for trying the program out. No road, house, water or name in it is real; ' +
  'it lies in the open sea. Public domain.'

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/"/g, '&quot;').replace(/</g, '&lt;').replace(/>/g, '&gt;')
const tagLines = (tags: Tags): string => Object.entries(tags).map(([k, v]) => `<tag k="${escaped(k)}" v="${escaped(v)}"/>`).join('')
const degrees = (value: number): string => value.toFixed(7)

/** The map as OpenStreetMap XML, version 0.6. */
export function writeOsm({ nodes, ways, relations }: OsmStore): string {
  const { south, west, north, east } = demoBounds()
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<!-- ${NOTE} -->`,
    '<osm version="0.6" generator="millrace demo" timestamp="2026-01-01T00:00:00Z">',
    `<note>${NOTE}</note>`,
    `<bounds minlat="${degrees(south)}" minlon="${degrees(west)}" maxlat="${degrees(north)}" maxlon="${degrees(east)}"/>`,
  ]
  for (const { id, lat, lon, tags } of nodes)
    lines.push(`<node id="${id}" lat="${degrees(lat)}" lon="${degrees(lon)}"${tags ? `>${tagLines(tags)}</node>` : '/>'}`)
  for (const { id, nodeIds, tags } of ways) lines.push(`<way id="${id}">${nodeIds.map((ref) => `<nd ref="${ref}"/>`).join('')}${tagLines(tags)}</way>`)
  for (const { id, members, tags } of relations)
    lines.push(`<relation id="${id}">${members.map(({ type, ref, role }) => `<member type="${type}" ref="${ref}" role="${role}"/>`).join('')}${tagLines(tags)}</relation>`)
  lines.push('</osm>', '')
  return lines.join('\n')
}
