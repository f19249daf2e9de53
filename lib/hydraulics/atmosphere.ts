import { requireThat } from '../issue'
import { METRES_PER_FOOT, PASCALS_PER_INCH_OF_MERCURY, PASCALS_PER_PSI, feetOfWaterFromPsi } from '../units'

const SEA_LEVEL_PA = 101_325
/** 29.92 inHg: what a barometer corrected to sea level reads in the standard atmosphere. */
export const STANDARD_BAROMETER_INHG = SEA_LEVEL_PA / PASCALS_PER_INCH_OF_MERCURY

/**
 * Pressure of the air at an altitude, standard atmosphere, shifted by the day's barometer.
 *
 *   p = 101,325 Pa · (1 − 2.25577e-5 · h)^5.25588 · barometer / 29.92      h in metres
 *
 * @param altitude_ft    above sea level, −1,500 to 30,000
 * @param barometer_inHg optional, as weather reports give it: corrected to sea level, 25 to 32
 * @returns absolute pressure, [psi]
 * @throws RangeError outside those ranges
 * @source ISA formula (calc); table of two pump data books (seen), tests/reference/atmosphere.json
 */
export function atmosphericPressure_psi(altitude_ft: number, barometer_inHg?: number): number {
  requireThat(altitude_ft >= -1_500 && altitude_ft <= 30_000, 'altitude_ft', altitude_ft, 'from -1500 to 30000')
  if (barometer_inHg !== undefined) {
    requireThat(barometer_inHg >= 25 && barometer_inHg <= 32, 'barometer_inHg', barometer_inHg, 'from 25 to 32, corrected to sea level')
  }
  const standard_pa = SEA_LEVEL_PA * (1 - 2.25577e-5 * altitude_ft * METRES_PER_FOOT) ** 5.25588
  return (standard_pa / PASCALS_PER_PSI) * ((barometer_inHg ?? STANDARD_BAROMETER_INHG) / STANDARD_BAROMETER_INHG)
}

/**
 * Height of a column of water (60 °F) that the air would hold up over a perfect vacuum.
 *
 * Warm water is lighter, so the true column is up to 0.2 ft taller at 100 °F; left out, on the safe side.
 *
 * @param altitude_ft    above sea level, −1,500 to 30,000
 * @param barometer_inHg optional, corrected to sea level, 25 to 32
 * @returns head, [ft of water]
 * @throws RangeError outside those ranges
 * @source as atmosphericPressure_psi
 */
export function atmosphericHead_ft(altitude_ft: number, barometer_inHg?: number): number {
  return feetOfWaterFromPsi(atmosphericPressure_psi(altitude_ft, barometer_inHg))
}
