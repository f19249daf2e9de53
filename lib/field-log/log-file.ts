import { z } from 'zod'
import { issue, type Issue } from '../issue'
import { issuesFromZod, logSchema, siteEventSchema, type FieldLog, type SiteEvent } from '../plan'
import { mergeEvents } from './merge-events'

/** A log and all of its events in one file. */
const logFileSchema = z.strictObject({ format: z.literal('millrace-log-file'), version: z.literal(1), log: logSchema, events: z.array(siteEventSchema).max(50_000) })

export type LogFile = { log: FieldLog; events: SiteEvent[] }

/** @returns JSON that `readLogFile` reads back to the same log and the same events */
export const logFileText = (log: FieldLog, events: readonly SiteEvent[]): string =>
  `${JSON.stringify({ format: 'millrace-log-file', version: 1, log, events: mergeEvents(events) }, null, 1)}\n`

/** @returns the log with its events, or an issue: `log-file-not-json`, `log-file-other`, or what a schema says of the first thing wrong */
export function readLogFile(text: string): LogFile | Issue {
  let given: unknown
  try {
    given = JSON.parse(text)
  } catch {
    return issue('log-file-not-json', 'block')
  }
  if (typeof given !== 'object' || given === null || (given as { format?: unknown }).format !== 'millrace-log-file') return issue('log-file-other', 'block')
  const parsed = logFileSchema.safeParse(given)
  if (!parsed.success) return issuesFromZod(parsed.error, '', given)[0] ?? issue('log-file-other', 'block')
  const { log, events } = parsed.data
  return events.some(({ logId }) => logId !== log.id) ? issue('log-file-other', 'block') : { log, events: mergeEvents(events) }
}
