import type { Trial } from './trial'
import { isUnproven } from './unproven'

/** Gains below this are not called a gain: 5 gpm, or the 2 % by which queues alone may shift a flow (lib/shuttle/README.md). */
const NOTICEABLE_GPM = 5
const NOTICEABLE_SHARE = 0.02

/** A gain below this is not called one: 5 gpm, or 2 % of the flow that the plan holds. [gpm] */
export const noticeable_gpm = (flow_gpm: number): number => Math.max(NOTICEABLE_GPM, NOTICEABLE_SHARE * flow_gpm)

/** Of each group the best that gains, best first; those that would if what they stand on is true; and all that do not gain, nearest first. */
export type Ranked = { readonly helpful: readonly Trial[]; readonly unproven: readonly Trial[]; readonly idle: readonly Trial[] }

/** Gain for each person-minute of effort. */
export const gainPerEffort = ({ gain_gpm, work_s }: Trial): number => (gain_gpm * 60) / work_s

export type RankOrder = 'perEffort' | 'gain'

/**
 * Orders trials by gain per effort, or by gain alone; ties by gain, then by less effort, then by id, so that the
 * order in which changes were tried does not matter.
 */
export function rankTrials(trials: readonly Trial[], by: RankOrder = 'perEffort'): Ranked {
  const first = by === 'perEffort' ? gainPerEffort : ({ gain_gpm }: Trial) => gain_gpm
  const order = (a: Trial, b: Trial) => first(b) - first(a) || b.gain_gpm - a.gain_gpm || a.work_s - b.work_s || (a.candidate.id < b.candidate.id ? -1 : 1)
  const gaining = trials.filter(isGain).sort(order)
  const helpful = onePerGroup(gaining.filter((trial) => !isUnproven(trial)))
  const listed = new Set(helpful.map(({ candidate }) => candidate.group))
  const unproven = onePerGroup(gaining.filter((trial) => isUnproven(trial) && !listed.has(trial.candidate.group)))
  const idle = trials.filter((trial) => !isGain(trial)).sort((a, b) => b.gain_gpm - a.gain_gpm || (a.candidate.id < b.candidate.id ? -1 : 1))
  return { helpful, unproven, idle }
}

/** A pumper at the dump site sends on what comes: where that is not what limits, another one only shifts the moment at which supply is ready. */
const isGain = ({ candidate, before, gain_gpm }: Trial): boolean =>
  gain_gpm >= noticeable_gpm(before.flow_gpm) && (candidate.kind !== 'dumpPumper' || before.limitedBy === 'pump')

function onePerGroup(sorted: readonly Trial[]): Trial[] {
  const seen = new Set<string>()
  return sorted.filter(({ candidate: { group } }) => (seen.has(group) ? false : seen.add(group)))
}
