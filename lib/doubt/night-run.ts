import { SECONDS_PER_MINUTE } from '../units'
import { advance, begin, compileShuttle, FIRE, levelAt, type ShuttleSpec, type SimState } from '../shuttle'

/** What a night of the planned demand looked like at each moment of a clock. */
export type NightRun = {
  /** Clock of the model, then dump site: water in its portable tanks. */
  readonly level_gal: Float32Array
  /** Given to the fire ground up to each moment. */
  readonly delivered_gal: Float32Array
  /** 1 at each moment at which the demand is not fully met, from the moment on that it is asked for and somebody is there to meet it. */
  readonly isShort: Uint8Array
  /** Absent: never, as far as the clock goes. */
  readonly supplyReady_s?: number
  /** First moment after supply was ready that the demand was not met. Absent: never. */
  readonly failed_s?: number
}

/**
 * One night at the planned demand, looked at on a clock.
 *
 * @param spec    of the night
 * @param times_s rising moments to look at, from dispatch
 */
export function nightRun(spec: ShuttleSpec, times_s: readonly number[]): NightRun {
  const scenario = compileShuttle(spec)
  const state = begin(scenario)
  const dumpCount = spec.dumps.length
  const level_gal = new Float32Array(times_s.length * dumpCount)
  const delivered_gal = new Float32Array(times_s.length)
  const isShort = new Uint8Array(times_s.length)
  let failed_s: number | undefined
  let counted_s = 0
  times_s.forEach((time_s, t) => {
    advance(scenario, state, time_s)
    for (let d = 0; d < dumpCount; d++) level_gal[t * dumpCount + d] = levelAt(state, d)
    delivered_gal[t] = deliveredAt(state, time_s)
    isShort[t] = time_s >= scenario.demand.countFrom_s && state.fire[FIRE.isShort]! > 0 ? 1 : 0
    const short_s = shortSinceReadyAt(state, time_s)
    // Between two looks it went short for the difference, at the earliest right after the look before.
    if (failed_s === undefined && short_s > counted_s) failed_s = time_s - (short_s - counted_s)
    counted_s = short_s
  })
  const ready_s = state.fire[FIRE.allReady_s]!
  return { level_gal, delivered_gal, isShort, ...(Number.isFinite(ready_s) && { supplyReady_s: ready_s }), ...(failed_s !== undefined && { failed_s }) }
}

const deliveredAt = ({ fire }: SimState, now_s: number): number =>
  fire[FIRE.delivered_gal]! + (fire[FIRE.flow_gpm]! * (now_s - fire[FIRE.since_s]!)) / SECONDS_PER_MINUTE

function shortSinceReadyAt({ fire }: SimState, now_s: number): number {
  const since_s = fire[FIRE.since_s]!
  const goesOn = fire[FIRE.isShort]! > 0 && since_s >= fire[FIRE.allReady_s]!
  return fire[FIRE.shortSinceReady_s]! + (goesOn ? now_s - since_s : 0)
}
