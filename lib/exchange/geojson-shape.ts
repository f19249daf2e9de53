import type { Point } from '../geo'
import type { Shape } from './place'

type Found = { readonly shapes: readonly Shape[] } | { readonly wrong: string }

const pointFrom = (position: unknown): Point | undefined => {
  if (!Array.isArray(position)) return undefined
  const [lon, lat] = position as unknown[]
  return typeof lon === 'number' && typeof lat === 'number' && Number.isFinite(lon) && Number.isFinite(lat) ? { lat, lon } : undefined
}

const pointsFrom = (positions: unknown): Point[] | undefined => {
  if (!Array.isArray(positions) || positions.length === 0) return undefined
  const points = positions.map(pointFrom)
  return points.every((point) => point !== undefined) ? points : undefined
}

const ringsFrom = (rings: unknown): Point[][] | undefined => {
  if (!Array.isArray(rings) || rings.length === 0) return undefined
  const found = rings.map(pointsFrom)
  return found.every((ring) => ring !== undefined) ? found : undefined
}

/**
 * Shapes of a geometry of RFC 7946, section 3.1: several of one kind come apart, a null one is none.
 *
 * @returns shapes in their order, or the type that could not be read
 */
export function shapesFrom(geometry: unknown): Found {
  if (geometry === null || geometry === undefined) return { shapes: [] }
  const { type, coordinates, geometries } = geometry as { type?: unknown; coordinates?: unknown; geometries?: unknown }
  const each = <T>(list: unknown, one: (value: unknown) => T | undefined, shapeOf: (value: T) => Shape): Found => {
    const found = Array.isArray(list) ? list.map(one) : [undefined]
    return found.every((value) => value !== undefined) ? { shapes: (found as T[]).map(shapeOf) } : { wrong: String(type) }
  }
  const asPoint = (point: Point): Shape => ({ kind: 'point', point })
  const asLine = (points: Point[]): Shape => ({ kind: 'line', points })
  const asArea = (rings: Point[][]): Shape => ({ kind: 'area', rings })
  switch (type) {
    case 'Point': return each([coordinates], pointFrom, asPoint)
    case 'MultiPoint': return each(coordinates, pointFrom, asPoint)
    case 'LineString': return each([coordinates], pointsFrom, asLine)
    case 'MultiLineString': return each(coordinates, pointsFrom, asLine)
    case 'Polygon': return each([coordinates], ringsFrom, asArea)
    case 'MultiPolygon': return each(coordinates, ringsFrom, asArea)
    case 'GeometryCollection': {
      const parts = Array.isArray(geometries) ? geometries.map(shapesFrom) : [{ wrong: 'GeometryCollection' }]
      const wrong = parts.find((part) => 'wrong' in part)
      return wrong ?? { shapes: parts.flatMap((part) => ('shapes' in part ? part.shapes : [])) }
    }
    default: return { wrong: typeof type === 'string' ? type : 'geometry' }
  }
}
