import { advance, begin, compileShuttle, settle, withDemand, type ShuttleSpec } from '../shuttle'

/**
 * Water that tenders bring into the tanks by each of some moments, in one run of a plan with its own demand. A plan that asks for nothing
 * runs with dumping never blocked: its tanks would fill up and stop it.
 *
 * @param times_s rising, 0 or more
 * @returns gallons, one for each moment
 */
export function hauledBy_gal(spec: ShuttleSpec, times_s: readonly number[]): number[] {
  const compiled = compileShuttle(spec)
  const isAsked = spec.demand.stages.some(({ flow_gpm }) => flow_gpm > 0)
  const scenario = isAsked ? compiled : withDemand(compiled, 'open')
  const state = begin(scenario)
  return times_s.map((time_s) => {
    advance(scenario, state, time_s)
    settle(scenario, state)
    return state.given_gal.reduce((sum, given_gal, i) => sum + given_gal * scenario.tenders.keptShare[i]!, 0)
  })
}
