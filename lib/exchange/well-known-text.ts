import type { Point } from '../geo'
import { plainDecimal } from './plain-decimal'
import type { Shape } from './place'

/** A point or a line as well-known text of OGC 06-103r4, part 7: longitude first, `LINESTRING (-73.2 44.05, -73.1 44.06)`. */
export const wellKnownText = (points: readonly Point[]): string => {
  const pairs = points.map(({ lat, lon }) => `${plainDecimal(lon)} ${plainDecimal(lat)}`).join(', ')
  return points.length === 1 ? `POINT (${pairs})` : `LINESTRING (${pairs})`
}

/** Reads a point, a line or a polygon; heights and measures after the pair are passed over. Undefined where it is something else. */
export function readWellKnownText(text: string): Shape | undefined {
  const match = /^\s*(?:SRID=4326;\s*)?(POINT|LINESTRING|POLYGON)\s*(?:ZM?|M)?\s*\((.*)\)\s*$/is.exec(text)
  const [, kind = '', inside = ''] = match ?? []
  if (!match) return undefined
  if (kind.toUpperCase() === 'POLYGON') {
    const rings = [...inside.matchAll(/\(([^()]*)\)/g)].map(([, ring = '']) => pointsOf(ring))
    return rings.length > 0 && rings.every((ring) => ring !== undefined) ? { kind: 'area', rings } : undefined
  }
  const points = pointsOf(inside)
  const [first] = points ?? []
  if (!points || !first) return undefined
  return kind.toUpperCase() === 'POINT' ? { kind: 'point', point: first } : { kind: 'line', points }
}

function pointsOf(text: string): Point[] | undefined {
  const points = text.split(',').map((pair) => {
    const [lon, lat] = pair.trim().split(/\s+/).map(Number)
    return lat === undefined || lon === undefined || !Number.isFinite(lat) || !Number.isFinite(lon) ? undefined : { lat, lon }
  })
  return points.every((point) => point !== undefined) ? points : undefined
}
