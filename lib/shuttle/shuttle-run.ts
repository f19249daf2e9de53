import type { Issue } from '../issue'
import type { Balance } from './balance'
import type { RunDemand } from './demand-table'

export type DumpRun = {
  id: string
  supplyReady_s?: number
  /** Into the portable tanks. */
  received_gal: number
  /** Out of the tanks and the booster tank to the fire ground. */
  pumped_gal: number
  spilled_gal: number
  /** In the tanks the pumper drafts from. */
  level_gal: number
  /** In the tanks in front of them; absent where there are none. */
  front_gal?: number
  /** Lowest level since supply was ready, and when. */
  lowest_gal?: number
  lowest_s?: number
  /** Time a full tank held dumping back. */
  heldBack_s: number
  draftLossCount: number
  draftLost_s: number
  /** Part of the time since the site opened that each position was taken. */
  positionBusyShare: number[]
  /** Part of the time since it was set that the pumper fed the fire ground. */
  pumperBusyShare: number
}

export type FillRun = {
  id: string
  drawn_gal: number
  /** What is left in the source, absent when it does not run out. */
  source_gal?: number
  /** Time the bays had only the inflow. */
  sourceEmpty_s: number
  /** When the source first ran dry, after dispatch; absent when it never did. */
  sourceEmptyFrom_s?: number
  bayBusyShare: number[]
  /** Part of the time since the site opened that water ran into a tender. */
  pumperBusyShare: number
}

export type FeedRun = {
  id: string
  /** Brought into its site, or to the fire ground. */
  fed_gal: number
  /** When its source was used up; absent when it never was while the lay stood. */
  sourceEmptyFrom_s?: number
  /** What it brings from then on. */
  left_gpm?: number
}

export type TenderRun = {
  id: string
  /** Loads dumped. */
  roundCount: number
  given_gal: number
  waitedToDump_s: number
  waitedToFill_s: number
  /** At one-lane stretches. */
  waitedOnRoad_s: number
  /** Part of its time in the shuttle that it did not wait in a queue or on the road. */
  busyShare: number
}

export type ShuttleRun = {
  demand: RunDemand
  end_s: number
  firstWater_s?: number
  /** Every site that carries demand is ready. */
  supplyReady_s?: number
  engineEmpty_s?: number
  /** From the first engine's tank empty to supply ready, or to the end of the run if it never is. Absent without a first engine or before its tank is empty. */
  gap_s?: number
  /** Time the demand was not fully met since the first engine arrived (without one: since the first flow was asked for). */
  shortSinceArrival_s: number
  /** Time the demand was not fully met since all supply was ready. */
  shortSinceReady_s: number
  demanded_gal: number
  delivered_gal: number
  dumps: DumpRun[]
  fills: FillRun[]
  tenders: TenderRun[]
  /** Absent where no hose lay brings water. */
  feeds?: FeedRun[]
  balance: Balance
  issues: Issue[]
}
