import type { SiteEvent } from '@/lib/plan'
import { deviceTime_ms } from './clock-time'
import type { LogDesk } from './use-log'

/** Takes events back, be they undos themselves: that is noted beside each, by the same clock, and nothing is rubbed out. */
export function takeBack(desk: Pick<LogDesk, 'note'>, events: readonly SiteEvent[], by?: string): Promise<SiteEvent[]> {
  return desk.note(events.map(({ id, post, kind, device, at_ms, apparatusId, note }) => ({
    post, kind, device, at_ms, made_ms: deviceTime_ms(), retracts: id, ...(apparatusId !== undefined && { apparatusId }), ...(kind === 'note' && note !== undefined && { note }), ...(by !== undefined && { by }),
  })))
}
