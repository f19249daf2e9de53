import { pathsOverlap } from '@/lib/plan'

/** True when any of the touched paths speak of the same thing. */
export const overlaps = (a: readonly string[], b: readonly string[]): boolean => a.some((one) => b.some((other) => pathsOverlap(one, other)))
