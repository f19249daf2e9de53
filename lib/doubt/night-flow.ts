import { compileShuttle, flowTest, FLOW_RESOLUTION_GPM, hauledCapacity, type ShuttleSpec } from '../shuttle'
import { requirePositive } from '../issue'

export type NightFlow = {
  readonly flow_gpm: number
  /** The flow is at least this: the ceiling was held, and the night was left there. */
  readonly isAtLeast: boolean
  readonly runCount: number
}

/** Default of the shuttle's named runs, from supply ready. */
export const AFTER_READY_S = 7200

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
  const haul_gpm = spec.dumps.reduce((least, { demandShare }, d) => (demandShare > 0 ? Math.min(least, haul.byDump_gpm[d]! / demandShare) : least), Infinity)
  const top_gpm = Math.min(haul_gpm, pump_gpm)
  if (!(top_gpm > 0)) return { flow_gpm: 0, isAtLeast: false, runCount: 1 }
  const test = flowTest(scenario, afterReady_s, haul.steadyFrom_s)
  const counted = (flow_gpm: number, isAtLeast = false): NightFlow => ({ flow_gpm, isAtLeast, runCount: test.runCount() + 1 })
  let held_gpm = 0
  for (let step = 1; ; step++) {
    // On the grid even below a ceiling, so that a night's flow is the same to the bit whatever others hold.
    const flow_gpm = Math.min(step * grid_gpm, top_gpm)
    if (test(flow_gpm) !== undefined) return counted(between(test, held_gpm, flow_gpm))
    held_gpm = flow_gpm
    if (flow_gpm === top_gpm) return counted(flow_gpm)
    if (flow_gpm >= ceiling_gpm) return counted(flow_gpm, true)
  }
}

/** Halves one step of the grid between a flow that is held and one that is not. */
function between(test: (flow_gpm: number) => string | undefined, held_gpm: number, failing_gpm: number): number {
  while (failing_gpm - held_gpm > FLOW_RESOLUTION_GPM) {
    const middle_gpm = (held_gpm + failing_gpm) / 2
    if (test(middle_gpm) === undefined) held_gpm = middle_gpm
    else failing_gpm = middle_gpm
  }
  return held_gpm
}
