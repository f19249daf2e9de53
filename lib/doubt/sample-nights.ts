import { nightDrawer } from './draw-night'
import type { DoubtModel } from './model'
import { nightFlow } from './night-flow'
import { nightRun } from './night-run'

/** Nights one after the other, as flat tables: what a worker hands back. */
export type NightSample = {
  readonly from: number
  readonly count: number
  /** Nights on which the plan has no answer; their flow is 0 and their supply never ready. */
  blockedCount: number
  readonly flow_gpm: Float64Array
  /** Night, then input. */
  readonly factors: Float64Array
  /** Infinity: never. */
  readonly supplyReady_s: Float64Array
  /** When the planned demand was first not met after supply was ready. Infinity: never; −1: supply was never ready. */
  readonly failed_s: Float64Array
  /** Night, then clock, then dump site. */
  readonly level_gal: Float32Array
  /** Night, then clock. */
  readonly delivered_gal: Float32Array
  readonly isShort: Uint8Array
}

/**
 * Some nights of a model: the sustainable flow of each, and a run of the planned demand.
 *
 * @param from    index of the first night, 0 and up
 * @param count   of nights
 */
export function sampleNights(model: DoubtModel, seed: number, from: number, count: number): NightSample {
  const { times_s } = model
  const draw = nightDrawer(model, seed)
  const dumpCount = model.spec.dumps.length
  const inputCount = model.inputs.length
  const sample: NightSample = {
    from, count,
    blockedCount: 0,
    flow_gpm: new Float64Array(count),
    factors: new Float64Array(count * inputCount),
    supplyReady_s: new Float64Array(count).fill(Infinity),
    failed_s: new Float64Array(count).fill(-1),
    level_gal: new Float32Array(count * times_s.length * dumpCount),
    delivered_gal: new Float32Array(count * times_s.length),
    isShort: new Uint8Array(count * times_s.length).fill(1),
  }
  for (let n = 0; n < count; n++) {
    const night = draw(from + n)
    sample.factors.set(night.factors, n * inputCount)
    if (night.isBlocked) {
      sample.blockedCount++
      continue
    }
    sample.flow_gpm[n] = nightFlow(night.spec, night.pump_gpm, model.grid_gpm).flow_gpm
    const run = nightRun(night.spec, times_s)
    sample.level_gal.set(run.level_gal, n * times_s.length * dumpCount)
    sample.delivered_gal.set(run.delivered_gal, n * times_s.length)
    sample.isShort.set(run.isShort, n * times_s.length)
    if (run.supplyReady_s === undefined) continue
    sample.supplyReady_s[n] = run.supplyReady_s
    sample.failed_s[n] = run.failed_s ?? Infinity
  }
  return sample
}
