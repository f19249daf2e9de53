import { requirePositive } from '../issue'

/** LDH from this size up. Handbook study cards (seen-2nd). */
export const LDH_FROM_IN = 3.5
const SUPPLY_SERVICE_TEST_PSI = 200
const SMALLER_HOSE_PSI = 200
const WORKING_SHARE = 0.9

/**
 * Highest pressure a hose is worked at by its service test.
 *
 *   p = 0.9 · service test
 *
 * @param serviceTest_psi stencilled on the hose, above 0
 * @returns [psi]; 180 for the usual 200 psi supply hose
 * @throws RangeError if not positive
 * @source NFPA 1962-2018 §4.1 (seen), tests/reference/hose-friction.json
 */
export function workingPressure_psi(serviceTest_psi: number): number {
  requirePositive('serviceTest_psi', serviceTest_psi)
  return WORKING_SHARE * serviceTest_psi
}

/**
 * Highest working pressure of hose whose service test is not known.
 *
 * LDH: 180 psi, nine tenths of a 200 psi test; older practice is 185. Smaller hose: 200 psi, as the relay lesson plan works it.
 *
 * @param size_in nominal, above 0
 * @returns [psi]
 * @throws RangeError if not positive
 * @source NFPA 1962 (seen) for LDH; relay lesson plan (seen-2nd) for smaller hose
 */
export function defaultWorkingPressure_psi(size_in: number): number {
  requirePositive('size_in', size_in)
  return size_in >= LDH_FROM_IN ? workingPressure_psi(SUPPLY_SERVICE_TEST_PSI) : SMALLER_HOSE_PSI
}
