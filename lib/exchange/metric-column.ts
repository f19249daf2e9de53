import { findUnit, type Unit } from '../units'

/** Metric units at the end of a column's name, in words that `findWrittenUnit` knows. */
const ends: Readonly<Record<Unit, string>> = { gal: 'l', gpm: 'lpm', psi: 'kpa', ft: 'm', in: 'mm', mi: 'km', mph: 'kmh', lb: 'kg', inHg: 'kpa', degF: 'degc', s: 's', sqft: 'm2', cuft: 'm3' }

/** Name of a quantity's column in metric units: `lift_m` of `lift_ft`; undefined for what is no quantity. */
export function metricColumn(field: string): string | undefined {
  const unit = findUnit(field)
  return unit && `${field.slice(0, field.lastIndexOf('_'))}_${ends[unit]}`
}
