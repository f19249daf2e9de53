import { advance } from './advance'
import { withDemand } from './demand-table'
import { FLOW_RESOLUTION_GPM, searchFlow, type FlowFailure } from './flow-search'
import type { Scenario } from './scenario'
import { begin } from './start'
import { FIRE } from './state'
import { haulBound_gpm, type HeldFlow } from './sustainable-flow'

/** A flow held from a moment on, after another before it. */
export type LaterFlow = { readonly from_s: number; readonly flow_gpm: number; readonly startIds: readonly string[] }

/** A moment from which a run may have more water: a hose lay stands, as a feed or as the whole supply of a fill site. */
export type LaterStart = { readonly id: string; readonly at_s: number }

/** How long after a lay takes over the tanks must hold the reserve of the new flow. Assumed. */
const SETTLES_S = 900

/**
 * What is sustained from each moment on at which a hose lay takes over, after supply was ready without it.
 *
 * Before that moment the flow held so far is drawn, from it on the greatest that is held to the end: it and every lower one, to the
 * grid, as `sustainableFlow` says, the reserve kept from a quarter of an hour later on.
 *
 * @param held    what `sustainableFlow` found; a lay that stands before supply is ready is in it
 * @param started when each lay stands; default the feeds of the spec
 * @returns by time; lays that raise nothing are left out
 */
export function laterFlows(scenario: Scenario, held: HeldFlow, started: readonly LaterStart[] = (scenario.spec.feeds ?? []).map(({ id, ready_s }) => ({ id, at_s: ready_s }))): LaterFlow[] {
  const { duration_s } = held
  // Where nothing at all is held from supply ready on, the open run still says when that is.
  const supplyReady_s = held.supplyReady_s ?? held.haul.supplyReady_s
  if (supplyReady_s === undefined) return []
  const end_s = supplyReady_s + duration_s
  const starts = [...new Set(started.map(({ at_s }) => at_s))].filter((at_s) => at_s > supplyReady_s && at_s < end_s).sort((a, b) => a - b)
  const drawn = [{ from_s: 0, flow_gpm: held.flow_gpm }]
  const found: LaterFlow[] = []
  for (const from_s of starts) {
    const { flow_gpm } = searchFlow(laterTest(scenario, drawn, from_s, held), haulBound_gpm(scenario, held.haul))
    const before_gpm = drawn[drawn.length - 1]!.flow_gpm
    if (flow_gpm <= before_gpm + FLOW_RESOLUTION_GPM) continue
    drawn.push({ from_s, flow_gpm })
    found.push({ from_s, flow_gpm, startIds: started.filter(({ at_s }) => at_s === from_s).map(({ id }) => id) })
  }
  return found
}

function laterTest(scenario: Scenario, drawn: readonly { from_s: number; flow_gpm: number }[], from_s: number, { duration_s, haul }: HeldFlow): (flow_gpm: number) => FlowFailure | undefined {
  const keepReserveFrom_s = Math.max(haul.steadyFrom_s, from_s + SETTLES_S)
  return (flow_gpm) => {
    const spec = { ...scenario.spec, demand: { ...scenario.spec.demand, stages: [...drawn, { from_s, flow_gpm }] } }
    const probe = withDemand({ ...scenario, spec }, 'planned', { afterReady_s: duration_s, keepReserveFrom_s, endsAtLoss: true })
    const state = begin(probe)
    advance(probe, state, spec.horizon_s)
    if (state.losses.some((count) => count > 0)) return probe.demand.from_s[state.stage[0]!] === keepReserveFrom_s ? 'reserve' : 'draft'
    return state.fire[FIRE.allReady_s] === Infinity ? 'not-ready' : undefined
  }
}
