import type { DependableFlow, FirstToMeasure } from '../supply'
import { dependableFrom, DEPENDABLE_SHARE, NIGHT_COUNT, SEED, type DependableOptions } from './dependable'
import { nightDrawer } from './draw-night'
import type { DoubtModel } from './model'
import { nightFlow } from './night-flow'
import { firstToMeasure, rankingOf } from './ranking'

/**
 * What the nights say of the flow alone: the dependable flow, and the number to measure first. The same as in
 * the whole answer, without its charts.
 */
export function flowDoubt(model: DoubtModel, { nightCount = NIGHT_COUNT, share = DEPENDABLE_SHARE, seed = SEED }: DependableOptions = {}): { dependable: DependableFlow; firstToMeasure: FirstToMeasure | null } {
  const draw = nightDrawer(model, seed)
  const inputCount = model.inputs.length
  const flows_gpm = new Float64Array(nightCount)
  const factors = new Float64Array(nightCount * inputCount)
  for (let night = 0; night < nightCount; night++) {
    const { spec, pump_gpm, isBlocked, factors: drawn } = draw(night)
    factors.set(drawn, night * inputCount)
    flows_gpm[night] = isBlocked ? 0 : nightFlow(spec, pump_gpm, model.grid_gpm).flow_gpm
  }
  return { dependable: dependableFrom(flows_gpm, seed, share), firstToMeasure: firstToMeasure(rankingOf(model.inputs, factors, flows_gpm)) }
}
