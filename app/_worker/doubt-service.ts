import { compilePlan } from '@/lib/supply'
import { doubtFrom, nightDrawer, nightFlow, prepareDoubt, sampleNights, type DoubtAnswer, type DoubtModel, type NightSample } from '@/lib/doubt'
import type { Bundle } from '@/lib/plan'

/** What a worker of the pool does: one makes a model of the plan, all take it and work through nights. */
export type DoubtService = {
  /** Undefined when something blocks the plan's answer. */
  prepare(bundle: Bundle): Promise<DoubtModel | undefined>
  /** Nights asked for from now on are of this model. */
  take(model: DoubtModel): Promise<void>
  /** Sustainable flow of some nights; one that holds the ceiling is left there. */
  flows(seed: number, from: number, count: number, ceiling_gpm: number): Promise<Float64Array>
  sample(seed: number, from: number, count: number): Promise<NightSample>
  sum(samples: readonly NightSample[], seed: number): Promise<DoubtAnswer>
}

/** @throws RangeError (as a refusal) when nights are asked for before a model was taken */
export function doubtService(): DoubtService {
  let kept: DoubtModel | undefined
  const model = (): DoubtModel => {
    if (!kept) throw new RangeError('model is absent, must be taken first')
    return kept
  }
  return {
    prepare: async (bundle) => prepareDoubt(compilePlan(bundle)),
    take: async (given) => { kept = given },
    flows: async (seed, from, count, ceiling_gpm) => {
      const draw = nightDrawer(model(), seed)
      const { grid_gpm } = model()
      return Float64Array.from({ length: count }, (_, index) => {
        const { spec, pump_gpm, isBlocked } = draw(from + index)
        return isBlocked ? 0 : nightFlow(spec, pump_gpm, grid_gpm, ceiling_gpm).flow_gpm
      })
    },
    sample: async (seed, from, count) => sampleNights(model(), seed, from, count),
    sum: async (samples, seed) => doubtFrom(model(), samples, seed),
  }
}
