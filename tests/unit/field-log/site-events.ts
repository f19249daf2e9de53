import type { SiteEvent } from '@/lib/plan'

/** An id of the right form from a small number. */
export const uuid = (number: number): string => `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`

export const DAY_MS = Date.UTC(2026, 2, 7, 14)

/** An event at the dump site, `at_s` after two in the afternoon. */
export const event = (number: number, at_s: number, rest: Partial<SiteEvent> = {}): SiteEvent => ({
  id: uuid(number), logId: 'log', device: 'phone-a', post: { kind: 'dump', siteId: 'D' }, kind: 'arrived', apparatusId: 'T1',
  at_ms: DAY_MS + at_s * 1000, entered: 'button', ...rest,
})
