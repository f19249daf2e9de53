import { explainEvent, troublesOf, type Drill, type Finding } from '@/lib/priming/drill'

/**
 * Explains a run a trouble at a time, letting the screen breathe in between: each one plays parts of the run again.
 *
 * @param isWanted asked before each; false ends it
 */
export async function workOutFindings(drill: Drill, isWanted: () => boolean): Promise<readonly Finding[] | undefined> {
  const findings: Finding[] = []
  for (const event of troublesOf(drill)) {
    await new Promise((resolve) => { setTimeout(resolve) })
    if (!isWanted()) return undefined
    findings.push(explainEvent(drill, event))
  }
  return findings
}
