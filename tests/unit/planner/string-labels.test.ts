import { expect, it } from 'vitest'
import type { ChartLine } from '@/app/_charts/chart-lines'
import { stringLabels } from '@/app/_charts/string-labels'

const x = (time_s: number) => time_s / 4
/** Drives there and back again, each taking `drive_s`, from a start on. */
const line = (id: string, start_s: number, drive_s = 300, count = 6): ChartLine => ({
  id, letter: id, dash: undefined, waits: [], points: Array.from({ length: count + 1 }, (_, k) => ({ time_s: start_s + k * drive_s, share: k % 2 })),
})

it('names every line while it drives, on the line itself', () => {
  const lines = [line('12', 0), line('21', 100), line('72', 200)]
  const labels = stringLabels(lines, 1800, x)
  for (const { id, points } of lines) {
    const own = labels.filter((one) => one.id === id)
    expect(own.length).toBeGreaterThan(1)
    for (const { x: at, share } of own) {
      const k = points.findLastIndex(({ time_s }) => x(time_s) <= at)
      const [from, to] = [points[k]!, points[k + 1]!]
      expect(from.share + ((to.share - from.share) * (at * 4 - from.time_s)) / (to.time_s - from.time_s)).toBeCloseTo(share, 6)
    }
  }
})

it('writes no name over another, and none after the end', () => {
  const labels = stringLabels(Array.from({ length: 8 }, (_, k) => line(String(k + 1), k * 15)), 900, x)
  expect(labels.length).toBeGreaterThan(7)
  labels.forEach((one, k) => {
    expect(one.x).toBeLessThan(x(900))
    for (const other of labels.slice(0, k)) expect(Math.abs(one.share - other.share) > 0.1 || Math.abs(one.x - other.x) > 7).toBe(true)
  })
})
