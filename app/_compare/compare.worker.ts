import { expose } from 'comlink'
import { findBlob } from '@/app/_client/blobs'
import { PlannerEngine } from '@/app/_worker/planner-engine'
import type { Bundle } from '@/lib/plan'
import { evaluatePlan, type SupplyChart, type SupplyResult } from '@/lib/supply'

/** One plan as it stands beside others. */
export type ComparedAnswer = { result: SupplyResult; chart?: SupplyChart }

export type CompareService = { answer(bundle: Bundle): Promise<ComparedAnswer> }

const engine = new PlannerEngine(findBlob)
let last: Promise<unknown> = Promise.resolve()

/** One plan after the other: the engine holds one at a time. */
const service: CompareService = {
  answer(bundle) {
    const made = last.then(async (): Promise<ComparedAnswer> => {
      const { legs } = await engine.begin(bundle)
      const chart = engine.chart()
      return { result: evaluatePlan({ ...bundle, legs: [...legs] }, { withoutMeasure: true }), ...(chart && { chart }) }
    })
    last = made.catch(() => undefined)
    return made
  },
}

expose(service)
