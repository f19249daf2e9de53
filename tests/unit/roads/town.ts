import { isRoute, type Route, buildRoadGraph, findRoute, weighGraph, type RoadGraph, type RoadNoteLike, type Vehicle } from '@/lib/roads'
import type { Issue } from '@/lib/issue'
import type { Point } from '@/lib/geo'
import { readOsm, type OsmExtract } from '@/lib/osm'
import { unpackers } from '../osm/unpackers'

export type TownWay = { id: number; through: string; tags: Record<string, string> }
export type TownRestriction = { from: number; via: string | number | number[]; to: number; kind: string; extra?: Record<string, string> }
export type Town = {
  /** Rows of letters on a grid of 0.01°: each letter is a node, a dot is nothing. */
  grid: string
  ways: TownWay[]
  nodeTags?: Record<string, Record<string, string>>
  restrictions?: TownRestriction[]
}

const STEP = 0.01
const ORIGIN = { lat: 45, lon: -100 }

/** Place of a letter of the grid: rows go south, columns east. */
export function placeOf(town: Town, letter: string): Point {
  const rows = town.grid.trim().split('\n').map((row) => row.trim())
  const row = rows.findIndex((text) => text.includes(letter))
  if (row < 0) throw new Error(`no ${letter} in the grid`)
  return { lat: ORIGIN.lat - row * STEP, lon: ORIGIN.lon + (rows[row] ?? '').indexOf(letter) * STEP }
}

const nodeId = (letter: string): number => letter.charCodeAt(0)
const tagsXml = (tags: Record<string, string>): string =>
  Object.entries(tags).map(([key, value]) => `<tag k="${key}" v="${value.replaceAll('"', '&quot;')}"/>`).join('')

/** The town as an `.osm` document. */
export function osmOf(town: Town): string {
  const letters = [...new Set(town.grid.replace(/[\s.]/g, ''))]
  const nodes = letters.map((letter) => {
    const { lat, lon } = placeOf(town, letter)
    return `<node id="${nodeId(letter)}" lat="${lat.toFixed(7)}" lon="${lon.toFixed(7)}">${tagsXml(town.nodeTags?.[letter] ?? {})}</node>`
  })
  const ways = town.ways.map(({ id, through, tags }) => `<way id="${id}">${[...through].map((letter) => `<nd ref="${nodeId(letter)}"/>`).join('')}${tagsXml(tags)}</way>`)
  const restrictions = (town.restrictions ?? []).map(({ from, via, to, kind, extra = {} }, i) => {
    const viaMembers = typeof via === 'string'
      ? `<member type="node" ref="${nodeId(via)}" role="via"/>`
      : [via].flat().map((way) => `<member type="way" ref="${way}" role="via"/>`).join('')
    return `<relation id="${i + 1}"><member type="way" ref="${from}" role="from"/>${viaMembers}<member type="way" ref="${to}" role="to"/>${tagsXml({ type: 'restriction', restriction: kind, ...extra })}</relation>`
  })
  return `<?xml version="1.0" encoding="UTF-8"?>\n<osm version="0.6">\n${[...nodes, ...ways, ...restrictions].join('\n')}\n</osm>`
}

export async function extractOf(town: Town): Promise<OsmExtract> {
  const extract = await readOsm(new TextEncoder().encode(osmOf(town)), unpackers)
  if ('code' in extract) throw new Error(JSON.stringify(extract))
  return extract
}

export const graphOf = async (town: Town): Promise<RoadGraph> => buildRoadGraph(await extractOf(town)).graph

/** A loaded tender of the invented scenario, and the same one empty. */
export const loaded: Vehicle = { gross_lb: 46_000, height_ft: 10.5, width_ft: 8.2 }
export const empty: Vehicle = { ...loaded, gross_lb: 24_000 }

/** Letters of the grid that a route passes, in order. */
function lettersOf(town: Town, route: Route): string {
  const letters = [...new Set(town.grid.replace(/[\s.]/g, ''))]
  const near = (a: Point, b: Point): boolean => Math.abs(a.lat - b.lat) < 1e-6 && Math.abs(a.lon - b.lon) < 1e-6
  return route.path.map((point) => letters.find((letter) => near(placeOf(town, letter), point)) ?? '*').join('')
}

export type Asked = { vehicle?: Vehicle; notes?: RoadNoteLike[]; via?: Point[]; from?: Point; to?: Point; reach_ft?: number }

/** Route between two letters, or a place between two letters written as `AB`: halfway. */
export async function routeIn(town: Town, from: string, to: string, asked: Asked = {}): Promise<Route | Issue> {
  const graph = await graphOf(town)
  const weights = weighGraph(graph, asked.vehicle ?? loaded, asked.notes ?? [])
  return findRoute(graph, weights, asked.from ?? placeIn(town, from), asked.to ?? placeIn(town, to), asked.via ?? [], asked.reach_ft === undefined ? {} : { reach_ft: asked.reach_ft })
}

export function placeIn(town: Town, letters: string): Point {
  const places = [...letters].map((letter) => placeOf(town, letter))
  return { lat: places.reduce((sum, { lat }) => sum + lat, 0) / places.length, lon: places.reduce((sum, { lon }) => sum + lon, 0) / places.length }
}

/** Letters passed, or the code of the refusal. */
export async function wayIn(town: Town, from: string, to: string, asked: Asked = {}): Promise<string> {
  const found = await routeIn(town, from, to, asked)
  return isRoute(found) ? lettersOf(town, found) : found.code
}
