import type { Change } from '../plan'
import type { World } from './world'

/**
 * Whether a decision would set right what is in order already: a pump that runs, a tank that does not leak, a lay that is
 * whole. Nobody at a table can mend what has not broken, and a log that says so would mislead who goes through it.
 */
export function isInOrder({ conditions }: Pick<World, 'conditions'>, change: Change): boolean {
  switch (change.kind) {
    case 'fillRate':
      return change.rateShare === 1 && (conditions.fillShare[change.fillSiteId] ?? 1) === 1
    case 'tankLeak':
      return change.leak_gpm === 0 && (conditions.leak_gpm[change.dumpSiteId] ?? 0) === 0
    case 'layRate':
      return change.rateShare === 1 && (conditions.layShare[change.layId] ?? 1) === 1
    default:
      return false
  }
}
