import type { Point } from '../geo'
import type { Issue } from '../issue'

/** A stretch of one road in the order it is driven. */
export type RouteStep = {
  readonly name: string
  readonly ref: string
  readonly roadClass: string
  readonly distance_mi: number
  readonly travel_s: number
}

/** A posted limit that the route passes and the vehicle keeps. */
export type LimitCheck = {
  readonly kind: 'weight' | 'height' | 'width'
  /** In [lb] or [ft]. */
  readonly limit: number
  /** The vehicle's, in the same unit. */
  readonly vehicle: number
  readonly name: string
  readonly point: Point
  readonly isNoted: boolean
}

export type Route = {
  readonly distance_mi: number
  /** Driving, waiting at signals and gates, and getting under way and stopping once. */
  readonly travel_s: number
  readonly drive_s: number
  readonly wait_s: number
  readonly startStop_s: number
  /** From the place on the road nearest to the start, to that nearest to the end. */
  readonly path: readonly Point[]
  readonly steps: readonly RouteStep[]
  readonly limits: readonly LimitCheck[]
  /** What a driver must know; none of it stops the route. */
  readonly cautions: readonly Issue[]
  /** Gaps between the places asked for and the road. */
  readonly fromGap_ft: number
  readonly toGap_ft: number
}

/**
 * Time lost by getting under way and stopping, once a leg.
 *
 * Half of 25 s to reach 35 mph, and 5 s of easy braking, rounded up.
 * @source acceleration of 0 to 35 mph in 25 s as NFPA 1901 asks of apparatus (second-hand, from study cards); braking: common practice, no source
 */
export const START_STOP_S = 20
