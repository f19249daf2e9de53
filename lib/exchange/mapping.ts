import type { Unit } from '../units'
import { findWrittenUnit, plainUnitWord } from '../written-units'
import { findField, fieldsOf, type FieldSpec } from './list-fields'
import { metricColumn } from './metric-column'
import type { ItemList } from './place'

/** What a column becomes: a field of the list, or one of what every place has. */
export type ColumnUse = { readonly to: string; /** Word of its unit, or the order of its days. */ readonly unit?: string }

/** Ends that are not fields of a list: name and notes, a coordinate, both in one text, or a whole shape as well-known text. */
export const plainEnds = ['name', 'notes', 'lat', 'lon', 'latLon', 'shape'] as const

export type Mapping = {
  /** What the rows become. */
  readonly list: ItemList
  /** Kind of a source where no column says it. */
  readonly kind?: string
  readonly decimal: '.' | ','
  readonly columns: Readonly<Record<string, ColumnUse>>
  /** Latitude and longitude have changed places in the file. */
  readonly isSwapped?: boolean
  /** The file is one of ours. */
  readonly isOwn?: boolean
}

/** Columns of our own files, by their names: exact, or a quantity under another unit (`lift_m` is `lift_ft` in metres). */
export function ownColumns(columns: readonly string[], list: ItemList): Record<string, ColumnUse> {
  const uses: Record<string, ColumnUse> = {}
  for (const column of columns) {
    const use = ownUse(column, list)
    if (use) uses[column] = use
  }
  return uses
}

/** Ours, and those that map programs give a table they make of our file. */
const ownEnds: Readonly<Record<string, string>> = { name: 'name', notes: 'notes', description: 'notes', desc: 'notes', lat: 'lat', lon: 'lon', shape: 'shape', Y: 'lat', X: 'lon', WKT: 'shape' }

function ownUse(column: string, list: ItemList): ColumnUse | undefined {
  const end = ownEnds[column]
  if (end !== undefined) return { to: end }
  if (findField(list, column)) return { to: column }
  const at = column.lastIndexOf('_')
  if (at < 0) return undefined
  const quantities = fieldsOf(list).filter(({ unit }) => unit)
  const spec = quantities.find(({ path }) => metricColumn(path) === column) ?? quantities.find(({ path }) => path.slice(0, path.lastIndexOf('_')) === column.slice(0, at))
  return spec?.unit && findWrittenUnit(plainUnitWord(column.slice(at + 1)), spec.unit) ? { to: spec.path, unit: column.slice(at + 1) } : undefined
}

/** Fields that a column of another's file may become: those that a person can say in a cell. */
export const mappableFields = (list: ItemList): readonly FieldSpec[] =>
  fieldsOf(list).filter(({ path, type }) => path !== 'notes' && type !== 'json' && (type !== 'ref' || path === 'sourceId'))

/** First word of a unit by which a column of it is written in US customary or metric measure. */
export const usualUnit = (unit: Unit, isMetric: boolean): string => {
  const metric: Readonly<Record<Unit, string>> = { gal: 'l', gpm: 'l/min', psi: 'kpa', ft: 'm', in: 'mm', mi: 'km', mph: 'km/h', lb: 'kg', inHg: 'kpa', degF: '°c', s: 's', sqft: 'm2', cuft: 'm3' }
  const us: Readonly<Record<Unit, string>> = { gal: 'gal', gpm: 'gpm', psi: 'psi', ft: 'ft', in: 'in', mi: 'mi', mph: 'mph', lb: 'lb', inHg: 'inhg', degF: '°f', s: 'min', sqft: 'sqft', cuft: 'cuft' }
  return (isMetric ? metric : us)[unit]
}
