import { z } from 'zod'
import { siteEventSchema, type SiteEvent } from '@/lib/plan'

const pageSchema = z.object({ events: z.array(siteEventSchema), last: z.number(), total: z.number() })

/**
 * All events of a log that the station has.
 *
 * @throws Error if the station is out of reach or does not have the log
 */
export async function readSiteEvents(logId: string, signal: AbortSignal): Promise<SiteEvent[]> {
  const events: SiteEvent[] = []
  for (let after = 0; ;) {
    const response = await fetch(`/api/documents/${encodeURIComponent(logId)}/events?after=${after}`, { cache: 'no-store', signal })
    if (!response.ok) throw new Error(String(response.status))
    const page = pageSchema.parse(await response.json())
    events.push(...page.events)
    if (page.events.length === 0 || events.length >= page.total) return events
    after = page.last
  }
}
