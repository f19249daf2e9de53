import { feetOfWaterFromPsi } from '../units'
import { applianceLosses, placeOnLay, type LayLine } from './lay-line'
import type { CompiledRelay } from './arrangement'
import type { RelayResult } from './relay-result'

/** Pressure at one place of the lay; two points at one place stand before and behind a pump or an appliance. */
export type PlotPoint = {
  readonly at_ft: number
  readonly height_ft: number
  /** Water flowing. */
  readonly flowing_psi: number
  /** Flow stopped, pumpers holding their pressure. */
  readonly stopped_psi: number
  /** Working pressure of the hose there. */
  readonly working_psi: number
  /** Height of a column of water at that pressure above the same zero as `height_ft`. */
  readonly head_ft: number
}

/** Of a line drawn between breakpoints no more is asked; long legs get points between for the eye. */
const GAP_SHARE = 1 / 100

/**
 * Pressure along the lay, for a plot: straight between the points.
 *
 * @param relay  from compileRelay
 * @param result of relayResult for it
 * @returns points by rising distance; empty without flow
 */
export function pressurePlot({ line, spec }: CompiledRelay, { flow_gpm, pumpers }: RelayResult): PlotPoint[] {
  const first = pumpers[0]
  if (!first) return []
  const spaced = Array.from({ length: Math.round(1 / GAP_SHARE) + 1 }, (_, i) => line.length_ft * i * GAP_SHARE)
  const stands = new Set(pumpers.map(({ at_ft }) => at_ft))
  const places_ft = [...new Set([...line.x_ft, ...spaced, ...stands])].filter((at_ft) => at_ft <= line.length_ft).sort((a, b) => a - b)
  const points: PlotPoint[] = []
  let turn = -1, head_psi = 0, held_psi = -Infinity
  const put = (at_ft: number, isBefore: boolean) => {
    const place = placeOnLay(line, at_ft, flow_gpm), step = isBefore ? stepAt(line, at_ft, flow_gpm) : undefined
    // Just before a place its appliances are not passed yet, and the hose is that before it.
    const flowing_psi = head_psi - place.z_psi - place.loss_psi + (step?.loss_psi ?? 0)
    points.push({
      at_ft, height_ft: place.height_ft, flowing_psi, stopped_psi: held_psi - place.z_psi, working_psi: step?.working_psi ?? place.working_psi,
      head_ft: place.height_ft + feetOfWaterFromPsi(flowing_psi),
    })
  }
  for (const at_ft of places_ft) {
    if (turn >= 0) put(at_ft, true)
    const step = stepAt(line, at_ft, flow_gpm)
    let isStep = step !== undefined && (step.loss_psi > 0 || step.working_psi !== placeOnLay(line, at_ft, flow_gpm).working_psi)
    while (pumpers[turn + 1] && (pumpers[turn + 1]?.at_ft ?? Infinity) <= at_ft) {
      turn++
      const one = pumpers[turn]
      const place = placeOnLay(line, at_ft, flow_gpm)
      head_psi = (one?.discharge_psi ?? 0) + place.z_psi + place.loss_psi
      const own_psi = (one?.discharge_psi ?? 0) + place.z_psi
      held_psi = spec.mode === 'open' ? own_psi : Math.max(held_psi, own_psi)
      isStep = true
    }
    if (isStep && at_ft < line.length_ft) put(at_ft, false)
  }
  return points
}

/** What changes at once at a breakpoint: losses of its appliances, and the working pressure of the hose before it. */
function stepAt({ x_ft, fittingCounts, masterCounts, working_psi }: LayLine, at_ft: number, flow_gpm: number): { readonly loss_psi: number; readonly working_psi: number } | undefined {
  const i = x_ft.indexOf(at_ft)
  if (i <= 0) return undefined
  const { fitting_psi, master_psi } = applianceLosses(flow_gpm)
  const added = (counts: readonly number[]) => (counts[i] ?? 0) - (counts[i - 1] ?? 0)
  return { loss_psi: added(fittingCounts) * fitting_psi + added(masterCounts) * master_psi, working_psi: working_psi[i - 1] ?? 0 }
}
