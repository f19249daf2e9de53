import { compilePlan } from '@/lib/supply'
import { doubtFrom, prepareDoubt, sampleNights, type DoubtAnswer, type DoubtModel, type NightSample } from '@/lib/doubt'
import type { Bundle } from '@/lib/plan'

/** What a worker of the pool does: one makes a model of the plan, all take it and work through nights. */
export type DoubtService = {
  /** Undefined when something blocks the plan's answer. */
  prepare(bundle: Bundle): Promise<DoubtModel | undefined>
  /** Nights asked for from now on are of this model. */
  take(model: DoubtModel): Promise<void>
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
    sample: async (seed, from, count) => sampleNights(model(), seed, from, count),
    sum: async (samples, seed) => doubtFrom(model(), samples, seed),
  }
}
