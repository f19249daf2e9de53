import type { Page } from '@playwright/test'
import { valueAt } from './cost'

/** Runs in the page; as text, because the names that the compiler adds to functions are not known there. */
const watch = (count: number): string => `new Promise((resolve) => {
  const times = []
  requestAnimationFrame(function next(now) {
    times.push(now)
    if (times.length > ${count}) resolve(times.slice(1).map((time, index) => time - times[index]))
    else requestAnimationFrame(next)
  })
})`

/** Times from frame to frame, [ms], while something is done. */
export async function framesOf(page: Page, count: number, work: (isDone: () => boolean) => Promise<void> = async () => undefined): Promise<number[]> {
  let isDone = false
  const frames = page.evaluate<number[]>(watch(count)).finally(() => { isDone = true })
  await work(() => isDone)
  return frames
}

export const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

export const at = (values: readonly number[], share: number): string => valueAt(values, share).toFixed(1)
