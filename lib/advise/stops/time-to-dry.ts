import { advance, AFTER_READY_S, begin, carry, compileShuttle, EVENT, fork, hauledCapacity, roundOf, withDemand, type Scenario, type ShuttleSpec, type SimState } from '../../shuttle'

/** Moments of a round at which it may stop; the worst counts. */
const MOMENT_COUNT = 12

/** A run of the plan as it is at a constant flow, up to each of the moments at which something may stop. */
export type Moments = {
  readonly scenario: Scenario
  readonly flow_gpm: number
  /** A run is followed this long after something stopped: the time that supply must last. */
  readonly followed_s: number
  /** `ends_s`: how long the flow would have been there with nothing stopped, where a source runs out. */
  readonly at: readonly { readonly state: SimState; readonly ends_s: number }[]
}

/** The shuttle at a constant flow, long enough that what stops late is still followed to the end. */
function scenarioAt(spec: ShuttleSpec, flow_gpm: number): Scenario {
  const duration_s = spec.afterReady_s ?? AFTER_READY_S
  return withDemand(compileShuttle({ ...spec, horizon_s: spec.horizon_s + duration_s }), flow_gpm, { afterReady_s: 2 * duration_s })
}

/**
 * Runs the plan at a flow that it holds, and keeps its state at twelve moments spread over the first round of its
 * slowest tender after the steady window begins, when everybody has been round once.
 *
 * @param flow_gpm asked for at the fire ground, above 0
 */
export function momentsOf(spec: ShuttleSpec, flow_gpm: number): Moments {
  const scenario = scenarioAt(spec, flow_gpm)
  const followed_s = spec.afterReady_s ?? AFTER_READY_S
  const from_s = hauledCapacity(compileShuttle(spec)).steadyFrom_s
  const round_s = Math.max(60, ...spec.tenders.map((tender) => roundOf(tender, spec.fills[tender.fillIndex]?.bayRate_gpm[0] ?? tender.fillLimit_gpm).cycle_s))
  const state = begin(scenario)
  const at: { state: SimState; ends_s: number }[] = []
  for (let moment = 0; moment < MOMENT_COUNT; moment++) {
    advance(scenario, state, Math.max(state.clock_s[0] ?? 0, from_s + (moment / MOMENT_COUNT) * round_s))
    at.push({ state: fork(state), ends_s: holdsFor_s(scenario, fork(state), followed_s) })
  }
  return { scenario, flow_gpm, followed_s, at }
}

/** Time from the state's clock to the first change of the flow at the fire ground; infinite when there is none. Moves the state. */
function holdsFor_s(scenario: Scenario, state: SimState, followed_s: number): number {
  const from_s = state.clock_s[0] ?? 0
  let ends_s = Infinity
  advance(scenario, state, from_s + followed_s, (kind, time_s) => {
    if (kind === EVENT.flow && ends_s === Infinity) ends_s = time_s - from_s
  })
  return ends_s
}

/**
 * Time from the worst moment at which something stops to the moment when the fire ground no longer gets the flow.
 *
 * The run as it was goes on under the shuttle without the part. At a constant flow that is held, the flow at the
 * fire ground first changes when a pumper has lost its draft and its booster tank is empty.
 *
 * @param onward the shuttle from then on
 * @returns undefined when the flow lasts as long as supply must, or as long as it would have lasted anyhow, whenever it stops
 */
export function timeToDry_s({ scenario, flow_gpm, followed_s, at }: Moments, onward: ShuttleSpec): number | undefined {
  const to = scenarioAt(onward, flow_gpm)
  const times_s = at.flatMap(({ state, ends_s }) => {
    const dry_s = holdsFor_s(to, carry(scenario, state, to), followed_s)
    return dry_s < ends_s ? [dry_s] : []
  })
  return times_s.length > 0 ? Math.min(...times_s) : undefined
}
