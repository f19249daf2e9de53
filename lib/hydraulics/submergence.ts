import { requirePositive } from '../issue'
import { GRAVITY_FTPERS2, velocity_ftPerS } from './velocity-head'

/** Water over and around a strainer that the trade asks for. */
export const FIELD_RULE_COVER_FT = 2
/** Strainer off the bottom. Trade practice (memory). */
export const OFF_BOTTOM_FT = 1

/**
 * Depth at which an open pipe end stops drawing air through a vortex.
 *
 *   S = D · (1 + 2.3 · Fr)      Fr = V / √(g D)
 *
 * A strainer's inflow area is larger than its bore, so for a strainer this is on the safe side.
 *
 * @param flow_gpm through this one line, 0 or more
 * @param bore_in  above 0
 * @returns cover over the inlet, [ft]
 * @throws RangeError if an argument is out of range
 * @source ANSI/HI 9.8, as quoted in an engineering note (seen-2nd), tests/reference/submergence.json
 */
export function vortexSubmergence_ft(flow_gpm: number, bore_in: number): number {
  requirePositive('bore_in', bore_in)
  const bore_ft = bore_in / 12
  const froude = velocity_ftPerS(flow_gpm, bore_in) / Math.sqrt(GRAVITY_FTPERS2 * bore_ft)
  return bore_ft * (1 + 2.3 * froude)
}

/** Cover a strainer wants: at least the rule; `advised_ft` is the larger of the rule and the vortex formula. */
export type StrainerCover = { readonly rule_ft: number; readonly vortex_ft: number; readonly advised_ft: number }

/**
 * Cover over a strainer by the 2 ft rule and by the vortex formula.
 *
 * @param flow_gpm through this one line, 0 or more
 * @param bore_in  above 0
 * @returns both, and the larger, [ft]
 * @throws RangeError if an argument is out of range
 * @source rule: NRCS and handbook (seen-2nd), others ask 3 ft; formula as vortexSubmergence_ft
 */
export function strainerCover(flow_gpm: number, bore_in: number): StrainerCover {
  const vortex_ft = vortexSubmergence_ft(flow_gpm, bore_in)
  return { rule_ft: FIELD_RULE_COVER_FT, vortex_ft, advised_ft: Math.max(FIELD_RULE_COVER_FT, vortex_ft) }
}
