import { compileShuttle, sustainableFlow, type ShuttleSpec } from '../shuttle'
import type { CompiledPlan } from './compile-plan'
import { linkTrials } from './improve-link'
import { pumpCapacity_gpm } from './pump-capacity'
import type { Link } from './result'

/**
 * Gain of every part of the chain when it alone is a tenth better, greatest first.
 *
 * @param sustainable_gpm of the plan as it is
 * @param pump_gpm        most that the pumpers at the dump sites send on
 */
export function rankLinks(spec: ShuttleSpec, sustainable_gpm: number, pump_gpm: number): Link[] {
  return linkTrials(spec)
    .map(({ kind, subjectId, spec: better, pumpFactor }) => ({
      kind, subjectId,
      gain_gpm: Math.max(0, Math.min(sustainableFlow(compileShuttle(better)).flow_gpm, pump_gpm * pumpFactor) - sustainable_gpm),
    }))
    .sort((a, b) => b.gain_gpm - a.gain_gpm)
}

/** What limits a plan, wherever it is named: the link with the greatest gain; null where no part alone makes a difference. */
export const limitOf = ([first]: readonly Link[]): Link | null => (first && first.gain_gpm > 0 ? first : null)

/**
 * What limits a plan that is compiled and whose flow is known.
 *
 * @returns null where no part alone makes a difference, or the plan is blocked
 */
export const limitingLinkOf = (compiled: CompiledPlan, sustainable_gpm: number): Link | null =>
  compiled.spec ? limitOf(rankLinks(compiled.spec, sustainable_gpm, pumpCapacity_gpm(compiled))) : null
