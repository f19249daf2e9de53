import { requireNotNegative, requirePositive } from '../issue'

/**
 * Friction loss in a fire hose lay.
 *
 *   FL = C · (Q / 100)² · L / 100
 *
 * @param coefficient C for the hose, 0 or more, [psi per 100 ft at 100 gpm]; see hose-coefficient.ts
 * @param flow_gpm    Q, 0 or more
 * @param length_ft   L, 0 or more
 * @returns loss, [psi]
 * @throws RangeError if an argument is negative
 * @source fire-service handbook form; worked checks of a city training record (seen), tests/reference/hose-friction.json
 */
export function frictionLoss_psi(coefficient: number, flow_gpm: number, length_ft: number): number {
  requireNotNegative('coefficient', coefficient)
  requireNotNegative('flow_gpm', flow_gpm)
  requireNotNegative('length_ft', length_ft)
  return (coefficient * (flow_gpm / 100) ** 2 * length_ft) / 100
}

/** Flow that loses this much in a lay: frictionLoss_psi solved for Q. [gpm] */
export function flowForLoss_gpm(coefficient: number, loss_psi: number, length_ft: number): number {
  requirePositive('coefficient', coefficient)
  requireNotNegative('loss_psi', loss_psi)
  requirePositive('length_ft', length_ft)
  return 100 * Math.sqrt((100 * loss_psi) / (coefficient * length_ft))
}

/** Length that loses this much at a flow: frictionLoss_psi solved for L. [ft] */
export function lengthForLoss_ft(coefficient: number, flow_gpm: number, loss_psi: number): number {
  requirePositive('coefficient', coefficient)
  requirePositive('flow_gpm', flow_gpm)
  requireNotNegative('loss_psi', loss_psi)
  return (100 * loss_psi) / (coefficient * (flow_gpm / 100) ** 2)
}

/** Coefficient that a flow test of a lay shows: frictionLoss_psi solved for C. */
export function coefficientFromTest(flow_gpm: number, length_ft: number, loss_psi: number): number {
  requirePositive('flow_gpm', flow_gpm)
  requirePositive('length_ft', length_ft)
  requireNotNegative('loss_psi', loss_psi)
  return (100 * loss_psi) / ((flow_gpm / 100) ** 2 * length_ft)
}

/**
 * Friction loss of 2.5 in hose by the older rule, kept as a second opinion.
 *
 *   FL per 100 ft = 2 q² + q      q = Q / 100; below 100 gpm 2 q² + q / 2
 *
 * @param flow_gpm  0 or more
 * @param length_ft 0 or more
 * @returns loss, [psi]; 5 to 50 % more than C = 2 gives
 * @throws RangeError if an argument is negative
 * @source engineer study cards (seen), tests/reference/hose-friction.json
 */
export function olderFrictionLoss_psi(flow_gpm: number, length_ft: number): number {
  requireNotNegative('flow_gpm', flow_gpm)
  requireNotNegative('length_ft', length_ft)
  const q = flow_gpm / 100
  return ((2 * q * q + (q < 1 ? q / 2 : q)) * length_ft) / 100
}
