import type { Issue } from '@/lib/issue'
import { sayIssue, type NameOf } from './say-issue'
import type { UnitSystem } from './unit-system'

/** An issue in words. */
export type IssueLine = { readonly one: Issue; readonly text: string }

/** Issues as lines to read, in the order given, none twice: what reads the same stands once, for all the items it is about. */
export function issueLines(issues: readonly Issue[], names: NameOf, system: UnitSystem): IssueLine[] {
  const lines = new Map<string, IssueLine>()
  for (const one of issues) {
    const text = sayIssue(one, names, system)
    const key = `${one.severity} ${text}`
    const known = lines.get(key)
    lines.set(key, known ? { text, one: { ...known.one, subjectIds: [...new Set([...known.one.subjectIds, ...one.subjectIds])] } } : { one, text })
  }
  return [...lines.values()]
}
