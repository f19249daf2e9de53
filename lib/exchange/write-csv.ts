import Papa from 'papaparse'
import { findUnit, metricDisplay } from '../units'
import { flatFields } from './flat-fields'
import { metricColumn } from './metric-column'
import { plainDecimal } from './plain-decimal'
import type { Place, Scalar } from './place'
import { guarded } from './spreadsheet-guard'
import { wellKnownText } from './well-known-text'
import { xmlText } from './xml-text'

const first = ['list', 'id', 'name', 'lat', 'lon', 'shape', 'plan', 'kind']
const last = ['notes', 'evidence']

/**
 * Places as a table (RFC 4180: commas, quotes, CR LF), one row each; a byte order mark in front, by which spreadsheets
 * know UTF-8. Control characters, which RFC 4180 has no place for, are left out. Columns that no place uses are left out. Lines stand as well-known text, lists and evidence as JSON.
 */
export function writeCsv(places: readonly Place[], { isMetric }: { isMetric: boolean }): string {
  const rows = places.map((place) => rowFrom(place, isMetric))
  const used = new Set(rows.flatMap((row) => Object.keys(row)))
  const columns = [...first.filter((column) => used.has(column)), ...[...used].filter((column) => !first.includes(column) && !last.includes(column)), ...last.filter((column) => used.has(column))]
  const cells = rows.map((row) => columns.map((column) => { const value = row[column]; return value === undefined ? '' : typeof value === 'string' && column !== 'lat' && column !== 'lon' ? guarded(xmlText(value)) : String(value) }))
  return `\ufeff${Papa.unparse({ fields: columns, data: cells }, { newline: '\r\n' })}\r\n`
}

function rowFrom({ list, id, name, shape, fields, plan }: Place, isMetric: boolean): Record<string, Scalar> {
  const points = shape?.kind === 'line' ? shape.points : shape?.kind === 'point' ? [shape.point] : []
  const [only] = points
  return {
    list, id, name,
    ...(plan !== undefined && { plan }),
    ...(only && points.length === 1 ? { lat: plainDecimal(only.lat), lon: plainDecimal(only.lon) } : points.length > 1 ? { shape: wellKnownText(points) } : {}),
    ...Object.fromEntries(Object.entries(flatFields(fields)).map(([field, value]) => (isMetric ? inMetric(field, value) : [field, value]))),
  }
}

/** Twelve digits: more than is known of anything, and no tail of the division. */
function inMetric(field: string, value: Scalar): [string, Scalar] {
  const unit = findUnit(field), column = metricColumn(field)
  if (!unit || column === undefined || typeof value !== 'number') return [field, value]
  const { factor, offset } = metricDisplay[unit]
  return [column, Number((value * factor + offset).toPrecision(12))]
}

