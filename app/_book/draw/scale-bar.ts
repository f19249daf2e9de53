import { FEET_PER_MILE, METRES_PER_FOOT } from '@/lib/units'
import { formatNumber, say, type UnitSystem } from '@/app/_text'
import '@/app/_text/areas/book'
import type { Page } from '../page/page'

const STEPS = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000] as const

export type ScaleBar = { readonly across: number; readonly label: string; /** What its whole length stands for. */ readonly metres: number }

/** The longest round length that is no longer on paper than asked. */
export function scaleBar(metresPerPoint: number, longest: number, system: UnitSystem): ScaleBar {
  const metres = metresPerPoint * longest
  const pick = (unit_m: number, key: 'book.scale.ft' | 'book.scale.mi' | 'book.scale.m' | 'book.scale.km'): ScaleBar | undefined => {
    const value = STEPS.findLast((step) => step * unit_m <= metres)
    return value === undefined ? undefined : { across: (value * unit_m) / metresPerPoint, label: say(key, { value: formatNumber(value) }), metres: value * unit_m }
  }
  const small = system === 'us' ? pick(METRES_PER_FOOT, 'book.scale.ft') : pick(1, 'book.scale.m')
  const big = system === 'us' ? pick(METRES_PER_FOOT * FEET_PER_MILE, 'book.scale.mi') : pick(1000, 'book.scale.km')
  return big ?? small ?? { across: longest, label: '', metres }
}

/** @returns how much room it takes across and down */
export function drawScaleBar(page: Page, bar: ScaleBar, x: number, y: number): void {
  const half = bar.across / 2
  page.rect({ left: x, top: y, right: x + half, bottom: y + 4 }, { fill: 'ink' })
  page.rect({ left: x, top: y, right: x + bar.across, bottom: y + 4 }, { stroke: 'ink', width: 0.8 })
  page.line(bar.label, x + bar.across + 5, y - 3.2, { size: 8, weight: 'bold' })
}

/** An arrow to the north about a middle. @param angle of north on the paper from upright, in radians, clockwise */
export function drawNorth(page: Page, x: number, y: number, angle: number): void {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
  const turn = (dx: number, dy: number): [number, number] => [x + dx * cos - dy * sin, y + dx * sin + dy * cos]
  const path = (points: readonly (readonly [number, number])[]) => `${points.map(([dx, dy], i) => `${i === 0 ? 'M' : 'L'}${turn(dx, dy).map((one) => one.toFixed(2)).join(' ')}`).join('')}Z`
  page.shape(path([[0, -11], [4.5, 5], [0, 2]]), { fill: 'ink', stroke: 'ink', width: 0.6 })
  page.shape(path([[0, -11], [0, 2], [-4.5, 5]]), { fill: 'paper', stroke: 'ink', width: 0.6 })
  const [nx, ny] = turn(0, -16.5)
  page.line(say('book.north'), nx, ny - 4.6, { size: 7.5, weight: 'bold' }, 'middle')
}
