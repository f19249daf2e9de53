import { appendFileSync } from 'node:fs'

/**
 * Processor time of one call in µs, so that others on the machine count for less: the best of some rounds.
 * Times are printed, never asserted: a busy machine is no fault of the code.
 */
export function cost(count: number, run: () => unknown, rounds = 5): number {
  let least = Infinity
  for (let round = 0; round < rounds; round++) {
    const before = process.cpuUsage()
    for (let i = 0; i < count; i++) run()
    const { user, system } = process.cpuUsage(before)
    least = Math.min(least, (user + system) / count)
  }
  return least
}

/** The value that a share of all lie at or under; 1 is the greatest. */
export const valueAt = (values: readonly number[], share: number): number => [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN

export const median = (values: readonly number[]): number => valueAt(values, 0.5)

/** One measurement on a line of its own. */
export const line = (name: string, value: number, unit: string): void => console.log(`${name.padEnd(64)}${value.toFixed(value < 100 ? 2 : 0).padStart(10)} ${unit}`)

/**
 * One ratio taken in this run; `npm run bench` shows them all again at its end.
 *
 * @param of what one is, where the name does not say it
 */
export function ratio(name: string, value: number, of?: string): void {
  line(name, value, of === undefined ? 'times' : `times ${of}`)
  const file = process.env.MILLRACE_RATIOS
  if (file) appendFileSync(file, `${JSON.stringify({ bench: process.env.MILLRACE_BENCH, name, value, of })}\n`)
}
