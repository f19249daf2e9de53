import { recordRows, type Drill } from '@/lib/priming/drill'

/** The run's record as comma-separated values, one row each tenth of a second, names with their units on top. Numbers only, so nothing needs quoting. */
export const csvOf = (drill: Drill): string => `${recordRows(drill.record).map((row) => row.join(',')).join('\r\n')}\r\n`
