import { atmosphericHead_ft, frictionLoss_psi, handFigure_gpm, hoseCoefficient, usableTank_gal, vaporHead_ft } from '@/lib/hydraulics'
import { inchesOfMercuryFromFeetOfWater, SECONDS_PER_MINUTE } from '@/lib/units'

/** Length that friction in hose is told for. [ft] */
export const HOSE_LENGTH_FT = 100
export const hoseSizes_in = [1.75, 2.5, 3, 4, 5] as const
export const hoseFlows_gpm = [100, 250, 500, 750, 1000] as const
/** What fire hose commonly bears in use; a loss above it is no answer. Common practice, no source. [psi] */
const MOST_PSI = 250

/** @returns loss in 100 ft, [psi]; undefined where hose would not bear it */
export function hoseLoss_psi(size_in: number, flow_gpm: number): number | undefined {
  const loss_psi = frictionLoss_psi(hoseCoefficient(size_in).coefficient, flow_gpm, HOSE_LENGTH_FT)
  return loss_psi > MOST_PSI ? undefined : loss_psi
}

export const lifts_ft = [5, 10, 15, 20, 22, 25] as const
/** Reading of the vacuum gauge that a standing column of water makes. [inHg] */
export const gaugeReading_inHg = (lift_ft: number): number => inchesOfMercuryFromFeetOfWater(lift_ft)

export const altitudes_ft = [0, 1000, 2000, 4000, 6000, 8000] as const
export const waters_degF = [40, 60, 80] as const
/** Height of water that the air holds up over its own vapor: no pump, no hose, nothing moving. [ft] */
export const highestColumn_ft = (altitude_ft: number, water_degF: number): number => atmosphericHead_ft(altitude_ft) - vaporHead_ft(water_degF)

export const tenderTanks_gal = [1000, 1500, 2000, 2500, 3000] as const
export const rounds_min = [10, 15, 20, 30] as const
/** What one tender brings by the hand figure, all of its round counted as road. [gpm] */
export const tenderBrings_gpm = (tank_gal: number, round_min: number): number =>
  handFigure_gpm([{ tank_gal, fill_s: 0, dump_s: 0, travel_s: round_min * SECONDS_PER_MINUTE }])

export const portableTanks_gal = [1500, 2000, 3000, 5000] as const
export const lastFlows_gpm = [250, 500, 750, 1000] as const
/** Time until nine tenths of a portable tank are gone. [s] */
export const tankLasts_s = (tank_gal: number, flow_gpm: number): number => (usableTank_gal(tank_gal) / flow_gpm) * SECONDS_PER_MINUTE
