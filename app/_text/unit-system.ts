/**
 * How quantities are shown and, when no unit is typed, read. A choice of screen and print;
 * documents and formulas stay in the units of `lib/units.ts`. `metric-bar` differs from
 * `metric` in pressures alone.
 */
export const unitSystems = ['us', 'metric', 'metric-bar'] as const
export type UnitSystem = (typeof unitSystems)[number]

/** Remembered under this name in a cookie, so that the server's first page is in the right units. */
export const UNIT_COOKIE = 'millrace-units'

/** The system of that name, or undefined for anything else. */
export function findUnitSystem(text: string | undefined): UnitSystem | undefined {
  return unitSystems.find((system) => system === text)
}
