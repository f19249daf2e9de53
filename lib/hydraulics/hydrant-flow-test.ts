import { requireNotNegative, requirePositive, requireThat } from '../issue'

/** Pressure left in the main while a pressure hydrant is used. */
export const HYDRANT_RESIDUAL_PSI = 20

/** What a two-point flow test of a pressure hydrant showed. */
export type HydrantTest = { readonly static_psi: number; readonly residual_psi: number; readonly flow_gpm: number }

/**
 * Flow a pressure hydrant gives when its main is drawn down to a pressure, from a two-point flow test.
 *
 *   Q = Q_test · ((static − p) / (static − residual))^0.54
 *
 * @param test   static pressure above the residual, flow above 0
 * @param at_psi pressure left, 0 or more; default 20
 * @returns [gpm]; 0 when the static is no higher than `at_psi`
 * @throws RangeError if the test's static is not above its residual
 * @source hydrant flow-test recommended practice, NFPA 291 (memory, high; exponent 0.54 is Hazen-Williams), tests/reference/openings.json
 */
export function hydrantAvailableFlow_gpm({ static_psi, residual_psi, flow_gpm }: HydrantTest, at_psi = HYDRANT_RESIDUAL_PSI): number {
  requirePositive('flow_gpm', flow_gpm)
  requireNotNegative('residual_psi', residual_psi)
  requireNotNegative('at_psi', at_psi)
  requireThat(static_psi > residual_psi, 'static_psi', static_psi, `above the residual of ${residual_psi}`)
  return static_psi <= at_psi ? 0 : flow_gpm * ((static_psi - at_psi) / (static_psi - residual_psi)) ** 0.54
}

/** Pressure left in the main at a flow: hydrantAvailableFlow_gpm solved for the pressure; may be negative, which no main can give. [psi] */
export function hydrantResidual_psi({ static_psi, residual_psi, flow_gpm }: HydrantTest, at_gpm: number): number {
  requirePositive('flow_gpm', flow_gpm)
  requireNotNegative('at_gpm', at_gpm)
  requireThat(static_psi > residual_psi, 'static_psi', static_psi, `above the residual of ${residual_psi}`)
  return static_psi - (static_psi - residual_psi) * (at_gpm / flow_gpm) ** (1 / 0.54)
}
