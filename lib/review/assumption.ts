import type { Mark, PlaceKind } from './marks'

/**
 * What a review took for granted, as data. `missing`: a mark nobody logged, with the time taken for it. `missing-stay`: a whole
 * stay that must have been. `never-logged`: a mark that nobody logged in all the log. `doubled`: logged twice, the first counts. `out-of-order`: logged
 * in an order that cannot be, its times taken in the order of a stay. `crossed`: a tender at two places at once, the
 * fill site's time left out. `contradicts`: an event that fits no stay, left out. `not-used`: no tender or place is named.
 * `load-unknown`: nobody knows what the tender holds. `dispatch-taken`: no dispatch in the log, taken from the first arrival.
 */
export type AssumptionKind =
  | 'missing' | 'missing-stay' | 'never-logged' | 'doubled' | 'out-of-order' | 'crossed' | 'contradicts' | 'not-used' | 'load-unknown'
  | 'dispatch-taken'

/** How a missing time was found: `between` two that were logged, or from the `usual` time of a stage before or after one. */
export type Basis = 'between' | 'usual'

export type ReviewAssumption = {
  readonly kind: AssumptionKind
  readonly apparatusId?: string | undefined
  readonly place?: PlaceKind | undefined
  readonly siteId?: string | undefined
  readonly mark?: Mark | undefined
  /** The time taken, or of the event that was left out. Seconds after dispatch. */
  readonly at_s?: number | undefined
  readonly basis?: Basis | undefined
  readonly eventIds: readonly string[]
}

export type NoteAssumption = (assumption: ReviewAssumption) => void
