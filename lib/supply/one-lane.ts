import type { Bundle } from '../plan'
import type { LanePass, LaneSpec, WayLanes } from '../shuttle'
import { defaults } from './defaults'
import { take, type Ledger } from './ledger'

/**
 * One-lane stretches of a plan as the shuttle sees them: n passing places make n + 1 equal pieces, each driven in one
 * direction at a time.
 */
export function lanesOf({ plan }: Bundle): LaneSpec[] {
  return (plan.oneLanes ?? []).flatMap(({ id, passingPlaceCount = 0 }) => Array.from({ length: passingPlaceCount + 1 }, (_, k) => ({ id: `${id}/${k + 1}` })))
}

/**
 * The stretches that a way between two sites meets, each direction in its order.
 *
 *   share of the way = time to drive through / time of the way, its middle where it was put
 *
 * A place at a share of the way from the fill site is at the rest of it from the dump site: both directions drive the same road.
 */
export function laneSharesOf({ plan }: Bundle, ledger: Ledger, fillSiteId: string, dumpSiteId: string, toFill_s: number, toDump_s: number): WayLanes {
  let index = 0
  const pieces: { laneIndex: number; fromShare: number; upToShare: number; middle: number }[] = []
  const shortest_s = Math.max(1, Math.min(toFill_s, toDump_s))
  for (const stretch of plan.oneLanes ?? []) {
    const count = (stretch.passingPlaceCount ?? 0) + 1
    const first = index
    index += count
    if (stretch.fillSiteId !== fillSiteId || stretch.dumpSiteId !== dumpSiteId) continue
    const length = Math.min(1, take(ledger, stretch, 'pass_s', stretch.pass_s, defaults.oneLane_s) / shortest_s)
    const begin = Math.min(1 - length, Math.max(0, (stretch.alongShare ?? 0.5) - length / 2))
    for (let k = 0; k < count; k++) {
      const fromShare = begin + (length * k) / count
      pieces.push({ laneIndex: first + k, fromShare, upToShare: begin + (length * (k + 1)) / count, middle: begin + (length * (k + 0.5)) / count })
    }
  }
  if (pieces.length === 0) return {}
  pieces.sort((a, b) => a.middle - b.middle)
  return { lanesToDump: inTurn(pieces), lanesToFill: inTurn(pieces.toReversed().map(({ laneIndex, fromShare, upToShare }) => ({ laneIndex, fromShare: 1 - upToShare, upToShare: 1 - fromShare }))) }
}

/** Stretches that were drawn over each other follow each other. */
function inTurn(passes: readonly LanePass[]): LanePass[] {
  let before = 0
  return passes.map(({ laneIndex, fromShare, upToShare }) => {
    const from = Math.min(1, Math.max(before, fromShare))
    before = Math.min(1, Math.max(from, upToShare))
    return { laneIndex, fromShare: from, upToShare: before }
  })
}
