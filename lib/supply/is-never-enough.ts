import type { SupplyResult } from './result'

/**
 * Whether the supply, once ready, never brings what is needed: neither the flow held from then on, nor one that a hose lay brings later.
 *
 * @returns false where nobody has said what is needed, or nothing is known of the flow
 */
export function isNeverEnough({ sustainable_gpm, needed_gpm, laterFlows = [] }: Pick<SupplyResult, 'sustainable_gpm' | 'needed_gpm' | 'laterFlows'>): boolean {
  return sustainable_gpm !== null && needed_gpm !== null && Math.max(sustainable_gpm, ...laterFlows.map(({ flow_gpm }) => flow_gpm)) < needed_gpm
}
