import { issue, type Issue } from '../issue'
import type { Point } from '../geo'
import { deepFields } from './flat-fields'
import { findField, fieldsOf } from './list-fields'
import type { Mapping } from './mapping'
import type { FoundFeature, Shape } from './place'
import { readCell } from './read-cell'
import { readDegrees, readPair } from './read-degrees'
import { readWellKnownText } from './well-known-text'

/** What is wrong in a file, at one place of it. A blocking one keeps its row out; any other keeps out that part alone. */
export type Problem = { readonly at: number; readonly name: string; readonly column?: string; readonly issue: Issue }

/** A row understood: what it would become, before it is held against what is there. */
export type Draft = {
  readonly at: number
  readonly name: string
  readonly notes?: string
  readonly shape?: Shape
  /** Fields of the item, parts put together again. */
  readonly fields: Readonly<Record<string, unknown>>
  /** What stood in the file, by field of a quantity. */
  readonly entered: Readonly<Record<string, string>>
}

/** Understands one feature by a mapping; every cell that cannot be read is named. */
export function readFeature(feature: FoundFeature, mapping: Mapping): { draft: Draft; problems: Problem[] } {
  const { at, values } = feature
  const flat: Record<string, unknown> = {}
  const entered: Record<string, string> = {}
  const ends = new Map<string, { column: string; text: string }>()
  const found: { column?: string; issue: Issue }[] = []
  for (const [column, { to, unit }] of Object.entries(mapping.columns)) {
    const raw = values[column]
    const spec = findField(mapping.list, to)
    // Our own files say an empty text on purpose; in others' an empty cell says nothing.
    if (raw === undefined || (typeof raw === 'string' && raw.trim() === '' && !(mapping.isOwn && spec?.type === 'text'))) continue
    if (!spec || to === 'notes') {
      ends.set(to, { column, text: String(raw) })
      continue
    }
    const read = readCell(raw, spec, { ...(unit !== undefined && { unit }), decimal: mapping.decimal })
    if ('code' in read) found.push({ column, issue: read })
    else {
      flat[to] = read.value
      if (spec.unit) entered[to] = `${String(raw).trim()}${unit !== undefined && /^[-+\d.,\s]+$/.test(String(raw)) ? ` ${unit}` : ''}`.slice(0, 80)
    }
  }
  const placed = shapeFrom(feature, ends, mapping)
  if ('issue' in placed) found.push(placed)
  if (mapping.list === 'sources' && flat.kind === undefined && !found.some(({ column }) => column !== undefined && mapping.columns[column]?.to === 'kind')) {
    if (mapping.kind === undefined) found.push({ issue: issue('exchange-kind-missing', 'block') })
    else flat.kind = mapping.kind
  }
  // The ends of a way are found by where it lies.
  for (const { path, isRequired } of mapping.list === 'legNotes' ? [] : fieldsOf(mapping.list))
    if (isRequired && !path.includes('.') && flat[path] === undefined && path !== 'kind' && !found.some(({ column }) => column !== undefined && mapping.columns[column]?.to === path)) found.push({ issue: issue('exchange-field-missing', 'block', [], { field: path }) })
  const name = (ends.get('name')?.text ?? '').trim()
  if (name.length > 120) found.push({ column: ends.get('name')?.column ?? '', issue: issue('exchange-too-long', 'block', [], { limit: 120 }) })
  const notes = ends.get('notes')
  if (notes && notes.text.length > 4000) found.push({ column: notes.column, issue: issue('exchange-too-long', 'block', [], { limit: 4000 }) })
  return {
    draft: { at, name, fields: deepFields(flat), entered, ...(notes && { notes: notes.text }), ...('shape' in placed && { shape: placed.shape }) },
    problems: found.map((one) => ({ at, name, ...one })),
  }
}

type Placed = { shape: Shape } | { column?: string; issue: Issue }

function shapeFrom({ shape }: FoundFeature, ends: ReadonlyMap<string, { column: string; text: string }>, { decimal, isSwapped = false }: Mapping): Placed {
  if (shape) return checkedShape(isSwapped ? swapped(shape) : shape)
  const lat = ends.get(isSwapped ? 'lon' : 'lat'), lon = ends.get(isSwapped ? 'lat' : 'lon')
  if (lat && lon) {
    const readLat = readDegrees(lat.text, 'lat', decimal), readLon = readDegrees(lon.text, 'lon', decimal)
    if ('wrong' in readLat) return { column: lat.column, issue: wrongCoordinate(readLat.wrong, lat.text, 'lat') }
    if ('wrong' in readLon) return { column: lon.column, issue: wrongCoordinate(readLon.wrong, lon.text, 'lon') }
    return { shape: { kind: 'point', point: { lat: readLat.degrees, lon: readLon.degrees } } }
  }
  const both = ends.get('latLon')
  if (both) {
    const read = readPair(both.text, decimal)
    if ('wrong' in read) return { column: both.column, issue: wrongCoordinate(read.wrong, both.text, 'lat') }
    return { shape: { kind: 'point', point: isSwapped ? { lat: read.lon, lon: read.lat } : read } }
  }
  const text = ends.get('shape')
  const written = text && readWellKnownText(text.text)
  if (text && !written) return { column: text.column, issue: issue('exchange-not-a-shape', 'block', [], { text: text.text.slice(0, 40) }) }
  return written ? checkedShape(isSwapped ? swapped(written) : written) : { issue: issue('exchange-no-place', 'block') }
}

const swappedPoint = ({ lat, lon }: Point): Point => ({ lat: lon, lon: lat })

function swapped(shape: Shape): Shape {
  switch (shape.kind) {
    case 'point': return { kind: 'point', point: swappedPoint(shape.point) }
    case 'line': return { ...shape, points: shape.points.map(swappedPoint) }
    case 'area': return { kind: 'area', rings: shape.rings.map((ring) => ring.map(swappedPoint)) }
  }
}

const pointsOfShape = (shape: Shape): readonly Point[] => (shape.kind === 'point' ? [shape.point] : shape.kind === 'line' ? shape.points : shape.rings.flat())

function checkedShape(shape: Shape): Placed {
  for (const { lat, lon } of pointsOfShape(shape)) {
    const text = `${lat}, ${lon}`
    if (Math.abs(lat) > 360 || Math.abs(lon) > 360) return { issue: wrongCoordinate('projected', text, 'lat') }
    if (Math.abs(lat) > 90) return { issue: wrongCoordinate('range', text, 'lat') }
    if (Math.abs(lon) > 180) return { issue: wrongCoordinate('range', text, 'lon') }
  }
  return { shape }
}

function wrongCoordinate(wrong: 'not-a-coordinate' | 'other-axis' | 'projected' | 'range', text: string, axis: 'lat' | 'lon'): Issue {
  const values = { text: text.slice(0, 40) }
  switch (wrong) {
    case 'not-a-coordinate': return issue('exchange-not-a-coordinate', 'block', [], values)
    case 'other-axis': return issue('exchange-other-axis', 'block', [], values)
    case 'projected': return issue('exchange-projected', 'block', [], values)
    case 'range': return axis === 'lat' ? issue('exchange-latitude-range', 'block', [], values) : issue('exchange-longitude-range', 'block', [], values)
  }
}
