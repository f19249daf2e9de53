import type { CurvePoint } from './pump-curve'
import type { SuctionSetup } from './suction-setup'

/** Where a pumper stands and what the air and water are there. */
export type DraftPlace = {
  /** Water surface up to the intake's centre line; negative when the water stands higher. */
  readonly lift_ft: number
  readonly altitude_ft: number
  /** As weather reports give it, corrected to sea level; default the standard 29.92. */
  readonly barometer_inHg?: number
  readonly water_degF: number
}

/** The most a pumper took from draft, tried out: suction was the limit, not the engine. */
export type DraftTestPoint = DraftPlace & {
  readonly flow_gpm: number
  /** Default: the suction it was rated with. */
  readonly suction?: SuctionSetup
}

/** What is known of a pumper's pump. Only the rating is needed. */
export type PumperHydraulics = {
  readonly rated_gpm: number
  /** Most flow at a lift, tried out; replaces the rating for the suction side. */
  readonly testPoints?: readonly DraftTestPoint[]
  /** Most flow at a net pressure, tried out; replaces the rating for the discharge side. */
  readonly curvePoints?: readonly CurvePoint[]
  /** Highest vacuum held in the dry test. */
  readonly dryVacuum_inHg?: number
  /** Where that test was made; default 0, the smaller promise. */
  readonly dryVacuumAltitude_ft?: number
  readonly ratedLift_ft?: number
  readonly ratedSuction?: SuctionSetup
  /** Let the pump give up to 110 % of its rating below 150 psi; assumed. */
  readonly overRating?: boolean
  /** Highest place inside pump and piping that priming must fill, above the intake's centre line. */
  readonly pumpTop_ft?: number
}
