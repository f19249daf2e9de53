import type { SiteEvent } from '@/lib/plan'
import { getEventLog } from '../_client'

/**
 * The events of a log as far as they are known: this device's own, and the station's where it is in reach.
 *
 * @returns undefined where the station is out of reach and the device has none
 */
export async function readSiteEvents(logId: string): Promise<readonly SiteEvent[] | undefined> {
  const log = getEventLog(logId)
  await log.load()
  await log.sync()
  const { events, isAway } = log.view()
  return isAway && events.length === 0 ? undefined : events
}
