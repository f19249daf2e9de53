import { expect, it } from 'vitest'
import type { ChartLine } from '@/app/_charts/chart-lines'
import { startMarks } from '@/app/_charts/start-marks'

const lines = (...starts_s: number[]): ChartLine[] => starts_s.map((time_s, k) => ({ id: `t${k + 1}`, letter: String(k + 1), dash: undefined, waits: [], points: [{ time_s, share: 0 }, { time_s: time_s + 60, share: 0 }] }))
const LEFT = 76
const x = (time_s: number) => LEFT + time_s / 10

it('puts numbers that would overprint each other into one, in the order in which the lines begin', () => {
  expect(startMarks(lines(300, 300, 900), 3600, x, LEFT).map(({ words }) => words)).toEqual(['1, 2', '3'])
})

it('leaves no two over each other, however close they begin, and none left of the plot', () => {
  for (const step_s of [0, 20, 60, 90, 120, 300]) {
    const marks = startMarks(lines(...Array.from({ length: 12 }, (_, k) => k * step_s)), 3600, x, LEFT)
    expect(marks.flatMap(({ ids }) => ids).sort()).toEqual(Array.from({ length: 12 }, (_, k) => `t${k + 1}`).sort())
    marks.forEach(({ words, right }, k) => {
      expect(right - words.length * 7).toBeGreaterThanOrEqual(LEFT)
      if (k > 0) expect(right - words.length * 7).toBeGreaterThan(marks[k - 1]!.right)
    })
  }
})

it('names no line that begins after the end', () => {
  expect(startMarks(lines(300, 4000), 3600, x, LEFT)).toHaveLength(1)
})
