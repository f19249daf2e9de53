import { compileShuttle, runShuttle, type ShuttleSpec } from '@/lib/shuttle'
import { stepThrough } from './one-second-model'

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** How far apart the two models are on one spec, as shares of the step model's volume. */
export function difference(spec: ShuttleSpec, step = 1): { deliveredShare: number; hauledShare: number; losses: string } {
  const scenario = compileShuttle(spec)
  const flow = spec.demand.stages[0]!.flow_gpm
  const events = runShuttle(scenario, { demand: flow, afterReady_s: 7200 })
  const steps = stepThrough(spec, { flow, lastsAfterReady: 7200, step })
  const openEvents = runShuttle(scenario, { demand: 'open', afterReady_s: 7200 })
  const openSteps = stepThrough(spec, { lastsAfterReady: 7200, step })
  return {
    deliveredShare: events.delivered_gal / steps.delivered - 1,
    hauledShare: sum(openEvents.dumps.map(({ received_gal }) => received_gal)) / sum(openSteps.brought) - 1,
    losses: `${sum(events.dumps.map(({ draftLossCount }) => draftLossCount))}/${steps.losses}`,
  }
}
