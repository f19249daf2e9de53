import { deviceClocks, effectiveEvents, logWorld, onOneClock, type DeviceClock } from '../field-log'
import type { District, FieldLog, SiteEvent } from '../plan'
import { reviewLog, type LogReview } from './review-log'

export type EventsReview = LogReview & { readonly clocks: readonly DeviceClock[] }

/**
 * The review of a log as its devices kept it: corrections and undos taken in, all clocks laid on one.
 *
 * @param events in any order, with doubles
 */
export function reviewEvents(log: FieldLog, events: readonly SiteEvent[], district?: District, onProgress?: (share: number) => void): EventsReview {
  const counted = effectiveEvents(events).events
  const clocks = deviceClocks(counted, logWorld(log, district))
  return { ...reviewLog(log, onOneClock(counted, clocks), district, onProgress), clocks }
}
