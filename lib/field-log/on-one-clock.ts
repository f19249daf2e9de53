import type { SiteEvent } from '../plan'
import type { DeviceClock } from './device-clocks'
import { byTime } from './merge-events'

/** An event on the common clock. */
export type TimedEvent = SiteEvent & {
  /** Its time may be off by this against the others', clock alone [s]; undefined where nothing ties its device to theirs. */
  clockDoubt_s?: number
}

/**
 * Events with their times laid on one clock, in its order.
 *
 * @param clocks as `deviceClocks` found them; a device that has none stays as it is
 */
export function onOneClock(events: readonly SiteEvent[], clocks: readonly DeviceClock[]): TimedEvent[] {
  const byDevice = new Map(clocks.map((clock) => [clock.device, clock]))
  return events
    .map((event): TimedEvent => {
      const clock = byDevice.get(event.device)
      if (!clock || clock.basis === 'unlinked') return event
      return { ...event, at_ms: event.at_ms + Math.round(clock.shift_s * 1000), clockDoubt_s: clock.doubt_s }
    })
    .sort(byTime)
}
