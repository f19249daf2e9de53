import type { SiteEvent } from '@/lib/plan'
import { deviceTime_ms } from './clock-time'
import type { Noted } from './use-log'

/** What takes an event back, be that an undo itself: it is noted beside it, by the same clock, and nothing is rubbed out. */
export function takenBack({ id, post, kind, device, at_ms, apparatusId, note }: SiteEvent, by?: string): Noted {
  return { post, kind, device, at_ms, made_ms: deviceTime_ms(), retracts: id, ...(apparatusId !== undefined && { apparatusId }), ...(kind === 'note' && note !== undefined && { note }), ...(by !== undefined && { by }) }
}
