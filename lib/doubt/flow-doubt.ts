import type { DependableFlow, FirstToMeasure } from '../supply'
import { dependableFrom, type DependableOptions } from './dependable'
import type { DoubtModel } from './model'
import { nightFlows_gpm } from './night-flows'
import { firstToMeasure } from './first-to-measure'
import { rankingOf } from './ranking'
import { DEPENDABLE_SHARE, NIGHT_COUNT, SEED } from './usual-nights'

/**
 * What the nights say of the flow alone: the dependable flow, and the number to measure first. The same as in
 * the whole answer, without its charts.
 */
export function flowDoubt(model: DoubtModel, { nightCount = NIGHT_COUNT, share = DEPENDABLE_SHARE, seed = SEED }: DependableOptions = {}): { dependable: DependableFlow; firstToMeasure: FirstToMeasure | null } {
  const inputCount = model.inputs.length
  const factors = new Float64Array(nightCount * inputCount)
  const flows_gpm = nightFlows_gpm(model, { nightCount, seed }, (drawn, night) => { factors.set(drawn.factors, night * inputCount) })
  return { dependable: dependableFrom(flows_gpm, seed, share), firstToMeasure: firstToMeasure(rankingOf(model.inputs, factors, flows_gpm)) }
}
