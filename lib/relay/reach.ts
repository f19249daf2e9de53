import { applianceLosses, placeOnLay, stretchAt, type LayLine } from './lay-line'

/** Less than any gauge shows. */
export const PRESSURE_GRAIN_PSI = 1e-7
/** Just before an appliance, where a pumper stands when it cannot stand behind it. */
const BEFORE_FT = 0.01

export type ReachAsk = {
  readonly flow_gpm: number
  readonly from_ft: number
  /** Head leaving the pump: pressure + z + losses so far. */
  readonly head_psi: number
  /** Asked at the far end of the reach. */
  readonly end_psi: number
  /** Asked everywhere on the way. */
  readonly least_psi: number
}

/**
 * Farthest place, from where the water sets out, at which it still has the pressure asked; all hose before it keeps the least.
 *
 *   p(y) = head − z(y) − losses(y), straight between breakpoints
 *
 * @param stations_ft places allowed, rising; any when absent
 * @returns feet from the source; undefined where no place will do
 */
export function findFarthest(line: LayLine, { flow_gpm, from_ft, head_psi, end_psi, least_psi }: ReachAsk, stations_ft?: readonly number[]): number | undefined {
  const losses = applianceLosses(flow_gpm)
  let farthest: number | undefined
  const take = (at_ft: number) => { farthest = Math.max(farthest ?? 0, at_ft) }
  let a_ft = from_ft
  let place = placeOnLay(line, a_ft, flow_gpm, losses)
  let a_psi = head_psi - place.z_psi - place.loss_psi
  if (a_psi >= end_psi - PRESSURE_GRAIN_PSI && (!stations_ft || stations_ft.includes(a_ft) || a_ft === 0)) take(a_ft)
  for (let i = stretchAt(line, from_ft); i < line.x_ft.length - 1; i++) {
    const b_ft = line.x_ft[i + 1] ?? a_ft
    if (b_ft <= a_ft) continue
    if (a_psi < least_psi - PRESSURE_GRAIN_PSI) break
    place = placeOnLay(line, b_ft, flow_gpm, losses)
    const behind_psi = head_psi - place.z_psi - place.loss_psi
    const step_psi = ((line.fittingCounts[i + 1] ?? 0) - (line.fittingCounts[i] ?? 0)) * losses.fitting_psi + ((line.masterCounts[i + 1] ?? 0) - (line.masterCounts[i] ?? 0)) * losses.master_psi
    const b_psi = behind_psi + step_psi
    const shareDownTo = (psi: number) => (b_psi >= psi ? 1 : a_psi <= psi ? 0 : (a_psi - psi) / (a_psi - b_psi))
    const open_ft = a_ft + shareDownTo(least_psi) * (b_ft - a_ft)
    if (stations_ft) {
      for (const at_ft of stations_ft) {
        if (at_ft <= a_ft || at_ft > open_ft) continue
        const psi = at_ft === b_ft ? behind_psi : a_psi + ((b_psi - a_psi) * (at_ft - a_ft)) / (b_ft - a_ft)
        if (psi >= end_psi - PRESSURE_GRAIN_PSI) take(at_ft)
      }
    } else if (b_psi >= a_psi || a_psi >= end_psi) {
      const most_ft = b_psi >= end_psi ? b_ft : a_psi >= end_psi ? a_ft + shareDownTo(end_psi) * (b_ft - a_ft) : undefined
      if (most_ft !== undefined) take(Math.min(open_ft, most_ft === b_ft && behind_psi < end_psi ? b_ft - BEFORE_FT : most_ft))
    }
    if (b_psi < least_psi - PRESSURE_GRAIN_PSI) break
    a_ft = b_ft
    a_psi = behind_psi
  }
  return farthest
}

/** Least pressure anywhere from a place to another, and at that other; water flowing. */
export function pressuresBetween(line: LayLine, flow_gpm: number, head_psi: number, from_ft: number, to_ft: number): { readonly least_psi: number; readonly end_psi: number } {
  const losses = applianceLosses(flow_gpm)
  const at = (at_ft: number) => {
    const place = placeOnLay(line, at_ft, flow_gpm, losses)
    return head_psi - place.z_psi - place.loss_psi
  }
  let least_psi = Math.min(at(from_ft), at(to_ft))
  for (let i = stretchAt(line, from_ft); i < line.x_ft.length; i++) {
    const x_ft = line.x_ft[i] ?? 0
    if (x_ft >= to_ft) break
    if (x_ft > from_ft) least_psi = Math.min(least_psi, at(x_ft))
  }
  return { least_psi, end_psi: at(to_ft) }
}
