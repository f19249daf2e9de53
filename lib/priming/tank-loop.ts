import { orificeFlow_gpm } from '../hydraulics'
import { requireNotNegative, requirePositive, requireThat } from '../issue'
import { feetOfWaterFromInchesOfMercury } from '../units'

/**
 * Coefficient of a tank fill line from its bore and its losses.
 *
 *   Cf = 29.84 · d² / √K
 *
 * @param bore_in         d, inside diameter, above 0
 * @param velocityHeads   K, all losses of the line in velocity heads, outlet included, above 0; a line with
 *                        a valve, four elbows and some 15 ft of pipe comes to 6 to 12 (handbook loss coefficients)
 * @returns [gpm per √psi]
 * @throws RangeError if an argument is not above 0
 * @source 29.84 · Cd · d² · √p (seen) with Cd = 1/√K; loss coefficients of the line are handbook values (memory)
 */
export function tankFillCoefficient(bore_in: number, velocityHeads: number): number {
  requirePositive('velocityHeads', velocityHeads)
  return orificeFlow_gpm(bore_in, 1, 1 / Math.sqrt(velocityHeads))
}

/** Losses assumed for a fill line nobody has measured: middle and range. Judgement from handbook loss coefficients; the line's own figure beats it. */
export const assumedFillVelocityHeads = { low: 5, middle: 8, high: 14 } as const

/** Inside diameters of the usual steel pipe sizes (schedule 40, from memory). */
export const pipeBore_in: Readonly<Record<string, number>> = { '1': 1.049, '1.25': 1.38, '1.5': 1.61, '2': 2.067, '2.5': 2.469, '3': 3.068 }

/**
 * Tank-to-pump coefficient from one observation: a flow and the vacuum it makes.
 *
 *   C = Q / √(v + z)
 *
 * Two uses. The line's acceptance flow with the most vacuum the pump can hold gives the
 * smallest line that passes. The loop run with the intake shut, its flow and the gauge,
 * gives the line's own coefficient.
 *
 * @param flow_gpm       Q, above 0
 * @param vacuum_ft      v at the pump's eye, feet of water; negative where the eye stands above the atmosphere
 * @param tankHeight_ft  z, water surface in the tank above the eye, 0 or more
 * @returns [gpm per √ft]
 * @throws RangeError if v + z is not above 0
 */
export function tankToPumpCoefficient(flow_gpm: number, vacuum_ft: number, tankHeight_ft: number): number {
  requirePositive('flow_gpm', flow_gpm)
  requireNotNegative('tankHeight_ft', tankHeight_ft)
  requireThat(vacuum_ft + tankHeight_ft > 0, 'vacuum_ft', vacuum_ft, 'more than the tank pushes')
  return flow_gpm / Math.sqrt(vacuum_ft + tankHeight_ft)
}

/** The same from the gauge in inches of mercury. */
export const tankToPumpCoefficientFromGauge = (flow_gpm: number, vacuum_inHg: number, tankHeight_ft: number): number =>
  tankToPumpCoefficient(flow_gpm, feetOfWaterFromInchesOfMercury(vacuum_inHg), tankHeight_ft)

/** Flow round the loop at a discharge pressure: Q = Cf·share·√(p − back), [gpm]. */
export function loopFlow_gpm(fill_gpmPerSqrtPsi: number, openShare: number, pressure_psi: number, back_psi: number): number {
  return fill_gpmPerSqrtPsi * openShare * Math.sqrt(Math.max(0, pressure_psi - back_psi))
}

/** Vacuum that a loop flow makes at the eye: (Q / (C·share))² − z, [ft]; negative: the eye stands above the atmosphere. */
export function loopVacuum_ft(flow_gpm: number, tankToPump_gpmPerSqrtFt: number, openShare: number, tankHeight_ft: number): number {
  return (flow_gpm / (tankToPump_gpmPerSqrtFt * openShare)) ** 2 - tankHeight_ft
}
