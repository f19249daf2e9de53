import { requireThat } from '../issue'
import { PHASE } from './phase'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/**
 * A tender on the road gets to the site it drives to at another time: it has turned round, or its road is open again. What is left of
 * one-lane stretches on its way is not met.
 *
 * @param i        index of a tender that drives from site to site
 * @param arrive_s not before the clock of the state
 * @param place    site it drives to, dump sites first, then fill sites; absent: the one it drove to before
 * @param state    changed in place; just carried over to a scenario in which the tender's way is another
 * @throws RangeError if there is no such tender, it does not drive, or the time lies in the past
 */
export function arriveAt(scenario: Scenario, state: SimState, i: number, arrive_s: number, place: number = state.place[i]!): void {
  requireThat(i >= 0 && i < scenario.tenders.count, 'i', i, 'the index of a tender')
  const phase = state.phase[i]!
  requireThat(phase === PHASE.drivesToFill || phase === PHASE.drivesToDump, 'phase', phase, 'that of a drive')
  requireThat(arrive_s >= state.clock_s[0]!, 'arrive_s', arrive_s, `${state.clock_s[0]!} or more`)
  state.next_s[i] = arrive_s
  state.place[i] = place
}
