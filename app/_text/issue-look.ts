import type { Issue } from '@/lib/issue'
import { isLoss, isUnfinished } from '@/lib/supply'
import { say } from './say'

/** How an issue looks: `loss` is water that is not there, `unfinished` a form that goes on; only what threatens the water is an alarm. */
export type IssueLook = 'block' | 'loss' | 'unfinished' | 'warn' | 'note'

export function issueLook(issue: Issue): IssueLook {
  if (issue.severity === 'block') return isUnfinished(issue) ? 'unfinished' : 'block'
  return isLoss(issue) ? 'loss' : issue.severity
}

/** Its word: "No answer", "Short of water", "To enter", "Check", "Note". */
export const issueLabel = (issue: Issue): string => say(`issue.severity.${issueLook(issue)}`)

/** Whether it threatens the water and is drawn as danger. */
export const isAlarm = (issue: Issue): boolean => ['block', 'loss'].includes(issueLook(issue))
