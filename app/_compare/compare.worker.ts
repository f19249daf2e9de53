import { expose } from 'comlink'
import { findBlob } from '@/app/_client/blobs'
import { BundleMaker } from '@/app/_worker/whole-bundle'
import type { Bundle } from '@/lib/plan'
import { evaluatePlan, type SupplyChart, type SupplyResult } from '@/lib/supply'

/** One plan as it stands beside others. */
export type ComparedAnswer = {
  result: SupplyResult
  chart?: SupplyChart
  /** The plan with every way found: what its nights are drawn from. */
  bundle: Bundle
}

export type CompareService = { answer(bundle: Bundle): Promise<ComparedAnswer> }

const maker = new BundleMaker(findBlob)
let last: Promise<unknown> = Promise.resolve()

/** One plan after the other: the engine holds one at a time. */
const service: CompareService = {
  answer(asked) {
    const made = last.then(async (): Promise<ComparedAnswer> => {
      const { bundle } = await maker.make(asked)
      const chart = maker.engine.chart()
      return { bundle, result: evaluatePlan(bundle), ...(chart && { chart }) }
    })
    last = made.catch(() => undefined)
    return made
  },
}

expose(service)
