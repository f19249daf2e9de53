import { expect, it } from 'vitest'
import { spreadMarks, type MarkSpot } from '@/app/_map/spread-marks'

const mark = (x: number, y: number): MarkSpot => ({ x, y, width: 30, height: 18 })
const symbol = (x: number, y: number): MarkSpot => ({ x, y, width: 28, height: 28 })
const put = (marks: readonly MarkSpot[], fixed: readonly MarkSpot[] = []) => spreadMarks(marks, fixed).map(({ x, y }, k) => ({ ...marks[k]!, x: marks[k]!.x + x, y: marks[k]!.y + y }))
const overlap = (a: MarkSpot, b: MarkSpot) => Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2

it('leaves a mark where it is that has room', () => {
  expect(spreadMarks([mark(10, 10), mark(100, 10)], [symbol(200, 10)])).toEqual([{ x: 0, y: 0 }, { x: 0, y: 0 }])
})

it('lines up those that stand at one place, over no other mark and not over the place itself', () => {
  const place = symbol(50, 50)
  for (const count of [1, 2, 5, 12]) {
    const spots = put(Array.from({ length: count }, () => mark(50, 50)), [place])
    spots.forEach((one, k) => {
      expect(overlap(one, place)).toBe(false)
      for (const other of spots.slice(0, k)) expect(overlap(one, other)).toBe(false)
    })
  }
})

it('moves nobody who came before when one more comes', () => {
  const three = [mark(50, 50), mark(52, 50), mark(49, 51)]
  expect(put([...three, mark(50, 50)]).slice(0, 3)).toEqual(put(three))
})
