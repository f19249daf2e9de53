import { AFTER_READY_S, compileShuttle, flowTest, haulBound_gpm, hauledCapacity, refineFlow, type ShuttleSpec } from '../shuttle'
import { requirePositive } from '../issue'

export type NightFlow = {
  readonly flow_gpm: number
  /** The flow is at least this: the ceiling was held, and the night was left there. */
  readonly isAtLeast: boolean
  readonly runCount: number
}

/**
 * Sustainable flow of one night: by the same rule as `sustainableFlow`, the greatest flow that and
 * every lower flow of the grid is held, no more than the haul and the pumpers bring, found
 * upwards on a grid that all nights share.
 *
 * @param grid_gpm    above 0
 * @param ceiling_gpm whether the night can hold more than this does not matter; default: it does
 * @throws RangeError if the grid is not above 0
 */
export function nightFlow(spec: ShuttleSpec, pump_gpm: number, grid_gpm: number, ceiling_gpm = Infinity): NightFlow {
  requirePositive('grid_gpm', grid_gpm)
  const scenario = compileShuttle(spec)
  const afterReady_s = spec.afterReady_s ?? AFTER_READY_S
  const haul = hauledCapacity(scenario, { afterReady_s })
  const top_gpm = Math.min(haulBound_gpm(scenario, haul), pump_gpm)
  if (!(top_gpm > 0)) return { flow_gpm: 0, isAtLeast: false, runCount: 1 }
  const test = flowTest(scenario, afterReady_s, haul.steadyFrom_s)
  const counted = (flow_gpm: number, isAtLeast = false): NightFlow => ({ flow_gpm, isAtLeast, runCount: test.runCount() + 1 })
  let held_gpm = 0
  for (let step = 1; ; step++) {
    // On the grid even below a ceiling, so that a night's flow is the same to the bit whatever others hold.
    const flow_gpm = Math.min(step * grid_gpm, top_gpm)
    if (test(flow_gpm) !== undefined) return counted(refineFlow(test, held_gpm, flow_gpm, undefined)[0])
    held_gpm = flow_gpm
    if (flow_gpm === top_gpm) return counted(flow_gpm)
    if (flow_gpm >= ceiling_gpm) return counted(flow_gpm, true)
  }
}
