import { requireThat } from '../issue'
import { FEET_OF_WATER_PER_PSI, KILOGRAMS_PER_POUND, METRES_PER_FOOT, POUNDS_PER_CUBIC_FOOT_OF_WATER, celsiusFromFahrenheit } from '../units'

/**
 * Weight of a cubic foot of air-free water at ordinary pressure.
 *
 *   ρ = (999.83952 + 16.945176 t − 7.9870401e-3 t² − 46.170461e-6 t³ + 105.56302e-9 t⁴ − 280.54253e-12 t⁵)
 *       / (1 + 16.87985e-3 t)      t in °C, ρ in kg/m³
 *
 * @param water_degF 32 to 212
 * @returns [lb per cubic foot]
 * @throws RangeError outside that range
 * @source Kell 1975, equation 16 (memory, high confidence)
 */
export function waterDensity_lbPerCuft(water_degF: number): number {
  requireThat(water_degF >= 32 && water_degF <= 212, 'water_degF', water_degF, 'from 32 to 212')
  const t = celsiusFromFahrenheit(water_degF)
  const above = 999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))))
  const density_kgPerM3 = above / (1 + 16.87985e-3 * t)
  return (density_kgPerM3 / KILOGRAMS_PER_POUND) * METRES_PER_FOOT ** 3
}

/** Feet of water of this temperature that make 1 psi; 2.309 at 60 °F, more when warm. */
export function feetOfWaterPerPsiAt(water_degF: number): number {
  return (FEET_OF_WATER_PER_PSI * POUNDS_PER_CUBIC_FOOT_OF_WATER) / waterDensity_lbPerCuft(water_degF)
}
