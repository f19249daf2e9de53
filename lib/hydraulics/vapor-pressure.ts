import { requirePositive, requireThat } from '../issue'
import { PASCALS_PER_PSI, celsiusFromFahrenheit } from '../units'
import { feetOfWaterPerPsiAt } from './water-density'

const CRITICAL_K = 647.096
const CRITICAL_PA = 22.064e6

/**
 * Pressure at which water of this temperature boils.
 *
 *   ln(p/pc) = (Tc/T)(−7.85951783 τ + 1.84408259 τ^1.5 − 11.7866497 τ³ + 22.6807411 τ^3.5 − 15.9618719 τ⁴ + 1.80122502 τ^7.5)
 *   τ = 1 − T/Tc
 *
 * @param water_degF 32 to 212
 * @returns absolute pressure, [psi]
 * @throws RangeError outside that range
 * @source IAPWS saturation equation (Wagner and Pruss; coefficients memory, high confidence);
 *   textbook table (seen), tests/reference/vapor-pressure.json
 */
export function vaporPressure_psi(water_degF: number): number {
  requireThat(water_degF >= 32 && water_degF <= 212, 'water_degF', water_degF, 'from 32 to 212')
  const kelvin = celsiusFromFahrenheit(water_degF) + 273.15
  const tau = 1 - kelvin / CRITICAL_K
  const root = Math.sqrt(tau)
  const t3 = tau * tau * tau
  const sum = tau * (-7.85951783 + 1.84408259 * root)
    + t3 * (-11.7866497 + 22.6807411 * root - 15.9618719 * tau)
    + 1.80122502 * t3 * t3 * tau * root
  return (CRITICAL_PA * Math.exp((CRITICAL_K / kelvin) * sum)) / PASCALS_PER_PSI
}

/**
 * Lift lost because warm water boils before a full vacuum is reached, in feet of that water.
 *
 *   H_vap = p_vap · 144 / ρ(T)
 *
 * @param water_degF 32 to 212
 * @returns head, [ft of water]; 0.59 at 60 °F, 2.2 at 100 °F
 * @throws RangeError outside that range
 * @source as vaporPressure_psi
 */
export function vaporHead_ft(water_degF: number): number {
  return vaporPressure_psi(water_degF) * feetOfWaterPerPsiAt(water_degF)
}

/**
 * Temperature at which water boils under an absolute pressure: the other way round of vaporPressure_psi, by bisection.
 *
 * At draft, water boils in the pump's eye once the pressure there falls to this: cavitation.
 *
 * @param pressure_psi absolute, 0.0887 (32 °F) to 14.7 (212 °F)
 * @returns [°F]
 * @throws RangeError outside that range
 * @source as vaporPressure_psi
 */
export function boilingPoint_degF(pressure_psi: number): number {
  requirePositive('pressure_psi', pressure_psi)
  let low = 32, high = 212
  const isWater = pressure_psi >= vaporPressure_psi(low) && pressure_psi <= vaporPressure_psi(high)
  requireThat(isWater, 'pressure_psi', pressure_psi, 'between the vapor pressures of 32 and 212 °F')
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (vaporPressure_psi(middle) < pressure_psi) low = middle
    else high = middle
  }
  return (low + high) / 2
}
