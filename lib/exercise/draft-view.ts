import { PUMPER, rowOf, type LoggedEvent, type Scenario, type SimState } from '../shuttle'

const names = ['sets-up', 'waits', 'draws', 'lost', 'reprimes'] as const

/** What the pumper of a dump site that feeds the fire does at a moment, and when its water is expected. */
export type DraftView = {
  /** `waits`: it stands ready, and the tanks do not hold enough yet. */
  readonly state: (typeof names)[number]
  /** Clock at which the draft was lost; absent while it is not. */
  readonly lostAt_s?: number
  /** Until it is set up, as things go now; absent once it is. */
  readonly set_s?: number
  /** Until it draws again, as things go now; absent while the draft is not lost, and where that hangs on tenders that have yet to dump. */
  readonly draws_s?: number
  /** What the tanks it drafts from must hold before it primes again; absent unless the draft is lost, and where they are too small for that. */
  readonly restart_gal?: number
  /** Left in its own tank, while that feeds the fire in place of the draft. */
  readonly own_gal?: number
}

/**
 * The draft of dump site `d`.
 *
 * @param state  settled, at the clock
 * @param getLog what was recorded up to then; read only where the draft is lost
 * @returns undefined where nothing is asked of the site
 */
export function draftOf(clock_s: number, scenario: Scenario, state: SimState, d: number, getLog: () => readonly LoggedEvent[]): DraftView | undefined {
  const { demand, dumps, entities, spec } = scenario
  const at = rowOf(demand, state) * dumps.count + d
  const pumper = state.pumper[d]!
  if (!(demand.siteFlow_gpm[at]! > 0)) return undefined
  const isLost = pumper === PUMPER.lost || pumper === PUMPER.reprimes
  const lostAt_s = isLost ? getLog().findLast(({ kind, siteId }) => kind === 'draft-lost' && siteId === spec.dumps[d]!.id)?.time_s : undefined
  const restart_gal = demand.restart_gal[at]!
  const tanks_s = state.next_s[entities.dumps + d]!
  const isRising = Math.abs(state.target_gal[d]! - restart_gal) < 1 && tanks_s < Infinity
  const draws_s = pumper === PUMPER.reprimes ? state.reprimed_s[d]! - clock_s : pumper === PUMPER.lost && isRising ? tanks_s - clock_s + dumps.reprime_s[d]! : undefined
  const set_s = state.next_s[entities.pumpers + d]! - clock_s
  return {
    state: names[pumper]!, ...(lostAt_s !== undefined && { lostAt_s }), ...(draws_s !== undefined && { draws_s: Math.max(0, draws_s) }),
    ...(pumper === PUMPER.setsUp && set_s >= 0 && set_s < Infinity && { set_s }),
    ...(pumper === PUMPER.lost && restart_gal < Infinity && { restart_gal }), ...(state.boosterOut_gpm[d]! > 0 && { own_gal: state.booster_gal[d]! }),
  }
}
