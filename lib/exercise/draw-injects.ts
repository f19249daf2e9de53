import { uniform } from '../random'
import type { Bundle } from '../plan'
import type { RoadClosure } from './road-closures'
import { possibleTroubles, troubleWeight, type PossibleTrouble } from './inject-library'

export const difficulties = ['easy', 'middling', 'hard'] as const
export type Difficulty = (typeof difficulties)[number]

/** How much a set bears, and the least time between two of its injects: a crew has time to see the first, and to act. Judgement, no source. */
const SETS: Readonly<Record<Difficulty, { readonly hardness: number; readonly gap_s: number; readonly heaviest: 1 | 2 | 3 }>> = {
  easy: { hardness: 3, gap_s: 900, heaviest: 2 },
  middling: { hardness: 6, gap_s: 600, heaviest: 3 },
  hard: { hardness: 10, gap_s: 300, heaviest: 3 },
}

export type DrawnTrouble = { readonly what: PossibleTrouble; readonly at_s: number }

const PURPOSE = { order: 1, time: 2 } as const
const TRIES = 40

/**
 * A set of troubles for a plan, the same for the same seed.
 *
 * Fair means: nothing that the plan does not have; no more than its difficulty bears; each kind once, and nothing struck
 * twice; time between any two; no trouble before what it strikes could be there; and never so many tenders gone that
 * fewer than half are left; and no road closed that somebody has no way round.
 *
 * @param seed     integer
 * @param closures roads that could be closed
 * @returns in order of time; fewer than wanted where the plan has no more to strike
 */
export function drawInjects(bundle: Bundle, seed: number, difficulty: Difficulty, closures: readonly RoadClosure[] = []): DrawnTrouble[] {
  const { hardness, gap_s, heaviest } = SETS[difficulty]
  const all = possibleTroubles(bundle, closures).filter(({ trouble, stuckIds }) => troubleWeight[trouble] <= heaviest && !stuckIds)
  const order = all.map((what, i) => ({ what, i, u: uniform(seed, i, PURPOSE.order, 0) })).sort((a, b) => a.u - b.u)
  const tenderCount = bundle.plan.tenders.length
  const drawn: DrawnTrouble[] = []
  let left = hardness
  for (const { what, i } of order) {
    const cost = troubleWeight[what.trouble]
    const isStruck = drawn.some(({ what: other }) => other.trouble === what.trouble || other.subjectIds.some((id) => what.subjectIds.includes(id)))
    if (cost > left || isStruck || (what.trouble === 'tenderOut' && tenderCount < 3)) continue
    const at_s = freeMoment(drawn, what, gap_s, (count) => uniform(seed, i, PURPOSE.time, count))
    if (at_s === undefined) continue
    drawn.push({ what, at_s })
    left -= cost
  }
  return drawn.sort((a, b) => a.at_s - b.at_s)
}

/** A whole minute within its time that keeps its distance from those drawn already. */
function freeMoment(drawn: readonly DrawnTrouble[], { when }: PossibleTrouble, gap_s: number, chance: (count: number) => number): number | undefined {
  for (let count = 0; count < TRIES; count++) {
    const at_s = Math.min(when.to_s, Math.max(when.from_s, Math.round((when.from_s + chance(count) * (when.to_s - when.from_s)) / 60) * 60))
    if (drawn.every((one) => Math.abs(one.at_s - at_s) >= gap_s)) return at_s
  }
  return undefined
}
