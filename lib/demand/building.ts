/** Hazard class of the occupancy: 3 severe, 4 high, 5 moderate, 6 low, 7 light. */
export type OccupancyClass = 3 | 4 | 5 | 6 | 7

/** Construction types of the building code: I fire-resistive … V wood frame. */
export type ConstructionType = 'I' | 'II' | 'III' | 'IV' | 'V'

/** A building as the methods see it: outside dimensions and what is known of its use. */
export type Building = {
  readonly length_ft: number
  readonly width_ft: number
  /** Each storey, ground floor first; at least one. */
  readonly storeyHeights_ft: readonly number[]
  /** Eaves to ridge; 0 for a flat roof. */
  readonly ridge_ft: number
  readonly occupancyClass: OccupancyClass
  readonly construction: ConstructionType
  readonly isDwelling: boolean
  /** Another structure within 50 ft and of 100 sq ft or more; of class 3 or 4, any size. */
  readonly exposureCount: number
  /** Distance to the nearest other building, where known: for the dwelling table of the rating schedule. */
  readonly spacing_ft?: number
  readonly isSprinklered?: boolean
  /** Share of the building on fire that the quick rule is asked for, above 0 to 1; default 1. */
  readonly involvedShare?: number
}
