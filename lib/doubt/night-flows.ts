import type { DependableOptions } from './dependable'
import { NIGHT_COUNT, SEED } from './usual-nights'
import { nightDrawer, type Night } from './draw-night'
import type { DoubtModel } from './model'
import { nightFlow } from './night-flow'

/**
 * Sustainable flow of each night of a model, 0 where some input leaves the plan without an answer; in the order of the nights. [gpm]
 *
 * @param onNight told of each night before the next is drawn
 */
export function nightFlows_gpm(model: DoubtModel, { nightCount = NIGHT_COUNT, seed = SEED }: Omit<DependableOptions, 'share'> = {}, onNight?: (drawn: Night, night: number) => void): Float64Array {
  const draw = nightDrawer(model, seed)
  const flows_gpm = new Float64Array(nightCount)
  for (let night = 0; night < nightCount; night++) {
    const drawn = draw(night)
    onNight?.(drawn, night)
    flows_gpm[night] = drawn.isBlocked ? 0 : nightFlow(drawn.spec, drawn.pump_gpm, model.grid_gpm).flow_gpm
  }
  return flows_gpm
}
