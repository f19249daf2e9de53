import { issue, type Issue } from '../issue'
import type { Change, Inject } from '../plan'
import type { Session } from './session'
import { missingFrom } from './world'

/**
 * What keeps an inject from coming as it is meant, at the clock of an exercise.
 *
 * @returns one issue, the first thing to mend; undefined where it can come
 */
export function checkInject({ now: { world }, clock_s }: Session, { id, trigger, change }: Inject): Issue | undefined {
  if (isIdle(change)) return issue('exercise-inject-idle', 'block', [id])
  const missing = change.kind === 'plan' ? undefined : missingFrom(world, change)
  if (missing !== undefined) return issue('exercise-names-nothing', 'block', [missing])
  if (trigger.kind === 'time' && trigger.at_s < clock_s) return issue('exercise-inject-past', 'block', [id])
  if (trigger.kind === 'level' && !world.spec.dumps.some((dump) => dump.id === trigger.dumpSiteId)) return issue('exercise-names-nothing', 'block', [trigger.dumpSiteId])
  if (trigger.kind === 'level' && trigger.belowShare === 0) return issue('exercise-inject-idle', 'block', [id])
  return undefined
}

function isIdle(change: Change): boolean {
  switch (change.kind) {
    case 'unitLate':
      return change.delay_s === 0
    case 'sourceLow':
      return change.leftShare === 1
    case 'tankTips':
      return change.lostShare === 0
    case 'moreDemand':
      return change.add_gpm === 0
    case 'plan':
    case 'tenderOut':
    case 'fillRate':
    case 'tankLeak':
    case 'layRate':
    case 'demand':
    case 'sendTender':
    case 'roadClosed':
    case 'roadOpened':
      return false
  }
}
