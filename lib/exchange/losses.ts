import type { Point } from '../geo'
import { findUnit, metricDisplay } from '../units'
import type { Place } from './place'
import { xmlText } from './xml-text'

/** Ways out: a table in metric units is one of its own. */
export const writtenFormats = ['geojson', 'kml', 'gpx', 'csv', 'csv-metric'] as const
export type WrittenFormat = (typeof writtenFormats)[number]

/** What a format cannot hold of a place; `after` is the place without it. */
export type Loss = {
  readonly code: 'control-characters' | 'empty-text' | 'far-meridian' | 'metric-digits' | 'no-place'
  readonly formats: readonly WrittenFormat[]
  readonly after: (place: Place) => Place | undefined
}

/**
 * All that is lost on the way out and back, by format. What is in no format: apparatus, equipment, settings, imported
 * roads, maps and elevation, and the parts of a plan that have no place.
 */
const losses: readonly Loss[] = [
  {
    code: 'control-characters', formats: ['kml', 'gpx', 'csv', 'csv-metric'],
    after: (place) => withTexts(place, xmlText),
  },
  {
    code: 'empty-text', formats: ['csv', 'csv-metric'],
    after: (place) => ({ ...place, fields: Object.fromEntries(Object.entries(place.fields).filter(([, value]) => typeof value !== 'string' || value.trim() !== '')) }),
  },
  {
    code: 'far-meridian', formats: ['gpx'],
    after: (place) => withPoints(place, ({ lat, lon }) => ({ lat, lon: lon === 180 ? -180 : lon })),
  },
  {
    code: 'no-place', formats: ['gpx', 'csv', 'csv-metric', 'geojson', 'kml'],
    after: (place) => (place.shape ? place : undefined),
  },
  {
    code: 'metric-digits', formats: ['csv-metric'],
    after: (place) => ({ ...place, fields: eachField(place.fields, (field, value) => (typeof value === 'number' ? throughMetric(field, value) : value)) }),
  },
]

/** What is lost in a format, for whoever writes to it. */
export const lossesOf = (format: WrittenFormat): readonly Loss[] => losses.filter(({ formats }) => formats.includes(format))

/** A place as it comes back from a format; undefined where nothing does. */
export const afterLosses = (place: Place, format: WrittenFormat): Place | undefined =>
  lossesOf(format).reduce<Place | undefined>((left, { after }) => left && after(left), place)

/** Fields of the item and of its parts, not those within lists. */
function eachField(fields: Readonly<Record<string, unknown>>, change: (field: string, value: unknown) => unknown): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).map(([field, value]) => [
    field, typeof value === 'object' && value !== null && !Array.isArray(value) && field !== 'evidence' ? eachField(value as Record<string, unknown>, change) : change(field, value),
  ]))
}

const withTexts = (place: Place, change: (text: string) => string): Place => ({
  ...place, name: change(place.name).trim(), fields: eachField(place.fields, (_, value) => (typeof value === 'string' ? change(value) : value)),
})

const withPoints = (place: Place, change: (point: Point) => Point): Place => {
  const { shape } = place
  if (shape?.kind === 'point') return { ...place, shape: { kind: 'point', point: change(shape.point) } }
  return shape?.kind === 'line' ? { ...place, shape: { ...shape, points: shape.points.map(change) } } : place
}

/** There and back to twelve digits: some figures come back a few parts in a million million off. */
function throughMetric(field: string, value: number): number {
  const unit = findUnit(field)
  if (!unit) return value
  const { factor, offset } = metricDisplay[unit]
  return (Number((value * factor + offset).toPrecision(12)) - offset) / factor
}
