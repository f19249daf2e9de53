import { requirePositive } from '../issue'

/** A vehicle as it is on one way: the same tender is two vehicles, loaded and empty. Absent is unknown. */
export type Vehicle = { readonly gross_lb?: number; readonly height_ft?: number; readonly width_ft?: number }

export type VehicleMeasure = keyof Vehicle

/**
 * What is taken for a measure nobody gave: the most that ordinary rules of the road let a
 * truck be, so no posting is passed on a guess.
 *
 * @source federal limits of the United States, 80,000 lb gross (23 CFR 658.17) and 102 in wide (23 CFR
 *   658.15), and the common state height of 13 ft 6 in; from memory
 */
export const largestOrdinary: Readonly<Required<Vehicle>> = { gross_lb: 80_000, height_ft: 13.5, width_ft: 8.5 }

/**
 * Fills in what is unknown.
 *
 * @returns all three measures, and the names of those that were assumed
 * @throws RangeError if a measure is given and not above 0
 */
export function completeVehicle(vehicle: Vehicle): { vehicle: Required<Vehicle>; assumed: VehicleMeasure[] } {
  const assumed: VehicleMeasure[] = []
  const complete = { ...largestOrdinary }
  for (const measure of ['gross_lb', 'height_ft', 'width_ft'] as const) {
    const value = vehicle[measure]
    if (value === undefined) assumed.push(measure)
    else {
      requirePositive(measure, value)
      complete[measure] = value
    }
  }
  return { vehicle: complete, assumed }
}
