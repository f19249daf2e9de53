import { requireNotNegative, requirePositive } from '../issue'
import { GALLONS_PER_CUBIC_FOOT, METRES_PER_FOOT, SECONDS_PER_MINUTE } from '../units'
import { boreArea_sqft } from './velocity-head'

/** A dry hydrant as built: pipe from the strainer under water to the connection. */
export type DryHydrant = {
  /** Nominal pipe bore. */
  readonly pipe_in: number
  readonly length_ft: number
  readonly elbow90Count?: number
  readonly elbow45Count?: number
  readonly reducerCount?: number
}

const MANNING_N = 0.010
/** Strainer and standpipe at 1,000 gpm; the sheet gives 1.2, 4.8 and 10.8 ft at 250, 500 and 750 gpm. */
const STRAINER_AND_STANDPIPE_FT = 19.2
const ELBOW_90_FT = 20
const ELBOW_45_FT = 10
const REDUCER_FT = 10

/**
 * Pipe loss of a dry hydrant, feet a hundred feet, by Manning's formula for a full pipe with n = 0.010.
 *
 *   k = 100 · (Q n / (1.486 A R^(2/3)))²      R = D/4
 *
 * About 40–50 % more than plastic-pipe tables give for 6 in: the design sheet's own margin, kept.
 *
 * @param flow_gpm 0 or more
 * @param pipe_in  nominal bore, above 0; the sheet covers 6 to 12 in
 * @returns [ft per 100 ft]
 * @throws RangeError if an argument is out of range
 * @source NRCS design sheet NE-ENG-76, 2004 (seen), tests/reference/dry-hydrant.json
 */
export function dryHydrantPipeLoss_ftPer100ft(flow_gpm: number, pipe_in: number): number {
  requireNotNegative('flow_gpm', flow_gpm)
  requirePositive('pipe_in', pipe_in)
  const flow_cfs = flow_gpm / GALLONS_PER_CUBIC_FOOT / SECONDS_PER_MINUTE
  const radius_ft = pipe_in / 12 / 4
  // 1.486 is the cube root of 3.2808: feet a metre.
  const manning = METRES_PER_FOOT ** (-1 / 3)
  return 100 * ((flow_cfs * MANNING_N) / (manning * boreArea_sqft(pipe_in) * radius_ft ** (2 / 3))) ** 2
}

/**
 * Strainer and standpipe loss of the sheet's standard dry hydrant.
 *
 *   ISL = 19.2 · (Q / 1000)²
 *
 * @param flow_gpm 0 or more; the sheet goes to 750
 * @returns [ft of water]
 * @throws RangeError if negative
 * @source NRCS design sheet NE-ENG-76, 2004 (seen)
 */
export function dryHydrantStrainerLoss_ft(flow_gpm: number): number {
  requireNotNegative('flow_gpm', flow_gpm)
  return STRAINER_AND_STANDPIPE_FT * (flow_gpm / 1000) ** 2
}

/**
 * Whole loss of a dry hydrant up to its connection: strainer and standpipe, pipe, and fittings as equivalent length.
 *
 *   loss = ISL + k · (length + 20 · elbows90 + 10 · elbows45 + 10 · reducers) / 100
 *
 * @param hydrant  the pipe as built
 * @param flow_gpm 0 or more
 * @returns [ft of water]
 * @throws RangeError if an argument is out of range
 * @source NRCS design sheet NE-ENG-76, 2004 (seen), tests/reference/dry-hydrant.json
 */
export function dryHydrantLoss_ft(hydrant: DryHydrant, flow_gpm: number): number {
  const { pipe_in, length_ft, elbow90Count = 0, elbow45Count = 0, reducerCount = 0 } = hydrant
  requireNotNegative('length_ft', length_ft)
  const equivalent_ft = length_ft + ELBOW_90_FT * elbow90Count + ELBOW_45_FT * elbow45Count + REDUCER_FT * reducerCount
  return dryHydrantStrainerLoss_ft(flow_gpm) + (dryHydrantPipeLoss_ftPer100ft(flow_gpm, pipe_in) * equivalent_ft) / 100
}
