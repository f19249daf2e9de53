import type { SiteEventKind } from '../plan'

/** What is seen of a tender on one stay where it gives water or takes it, in the order in which it happens. */
export const tenderSteps = {
  dump: ['arrived', 'dumping', 'empty', 'left'],
  fill: ['arrived', 'hookedUp', 'filling', 'full', 'left'],
} as const satisfies Readonly<Record<'fill' | 'dump', readonly SiteEventKind[]>>
