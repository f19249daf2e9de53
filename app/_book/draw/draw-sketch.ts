import { boxAround, extentOf, hatchLines, isApart, placeLabels, type Box, type LabelWish, type Sketch, type SketchLinePart, type SketchRectPart } from '@/lib/book'
import { METRES_PER_FOOT } from '@/lib/units'
import { formatNumber, say, type UnitSystem } from '@/app/_text'
import '@/app/_text/areas/book'
import { LEADING, wrap, type Measure } from '../page/measure'
import type { ShapeMark, Weight } from '../page/marks'
import { pathOf, type Page } from '../page/page'
import { drawArrow } from './draw-ways'
import { drawNorth, drawScaleBar, scaleBar } from './scale-bar'

const FEET_PER_INCH = [4, 5, 8, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400, 500] as const
const RATIOS = [50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 600, 750, 1000, 1250, 1500, 2000, 2500, 3000, 4000, 5000] as const

export type SketchScale = { readonly pointsPerFoot: number; readonly label: string }

/** The largest round scale at which so many feet fit in so many points. @throws RangeError when not even the smallest does */
function sketchScale(across_ft: number, down_ft: number, across: number, down: number, system: UnitSystem): SketchScale {
  const most = Math.min(across / across_ft, down / down_ft)
  if (system === 'us') {
    const feet = FEET_PER_INCH.find((one) => 72 / one <= most)
    if (feet === undefined) throw new RangeError(`extent is ${across_ft} by ${down_ft} ft, must fit the paper`)
    return { pointsPerFoot: 72 / feet, label: say('book.sketch.scale.us', { feet: formatNumber(feet) }) }
  }
  const ratio = RATIOS.find((one) => (METRES_PER_FOOT * 72) / 0.0254 / one <= most)
  if (ratio === undefined) throw new RangeError(`extent is ${across_ft} by ${down_ft} ft, must fit the paper`)
  return { pointsPerFoot: (METRES_PER_FOOT * 72) / 0.0254 / ratio, label: say('book.sketch.scale.metric', { ratio: formatNumber(ratio) }) }
}

export type SketchWords = {
  /** What to write in a shape, the fullest first. */
  readonly rect: (part: SketchRectPart, itemId: string | undefined, number: number | undefined) => readonly string[]
  readonly line: (part: SketchLinePart, number: number | undefined) => string
}

const rectLooks: Readonly<Record<SketchRectPart, Omit<ShapeMark, 'kind' | 'path'>>> = {
  road: { fill: 'sunk' }, lane: { stroke: 'line', width: 0.8, dash: [4, 3] }, water: { fill: 'waterSoft' }, tank: { fill: 'waterSoft', stroke: 'water', width: 1.6 },
  tender: { fill: 'paper', stroke: 'ink', width: 1.4 }, waiting: { fill: 'paper', stroke: 'quiet', width: 1, dash: [3, 2.5] }, pumper: { fill: 'ink', stroke: 'ink', width: 1 }, nurse: { fill: 'paper', stroke: 'water', width: 2.4 },
}
const lineLooks: Readonly<Record<SketchLinePart, Omit<ShapeMark, 'kind' | 'path'> & { readonly isArrow?: boolean }>> = {
  suction: { stroke: 'ink', width: 3.2, dash: [5, 1.6] }, fillLine: { stroke: 'ink', width: 1.8 }, supplyLine: { stroke: 'ink', width: 2.6, isArrow: true }, siphon: { stroke: 'ink', width: 1.6, dash: [2.5, 1.8], isArrow: true },
  lay: { stroke: 'ink', width: 2.2, dash: [9, 2.5, 1.5, 2.5], isArrow: true }, arriving: { stroke: 'ink', width: 1.6, isArrow: true }, leaving: { stroke: 'ink', width: 1.6, dash: [5, 3], isArrow: true }, backing: { stroke: 'ink', width: 1.2, isArrow: true },
}
const TYPE = 8
const PAD = 7
/** Of scale and north. */
const FOOT = 42

/** A site to scale: told by outline, pattern and word. @returns the scale it came out at */
export function drawSketch(page: Page, measure: Measure, sketch: Sketch, box: Box, system: UnitSystem, words: SketchWords): SketchScale {
  const { left_ft, top_ft, right_ft, bottom_ft } = extentOf(sketch)
  const corner: Box = { left: box.left, top: box.bottom - FOOT, right: box.left + 175, bottom: box.bottom }
  const corners = [corner, { ...corner, left: box.right - 90, right: box.right }]
  // Scale and north stand in the lower corners; the drawing keeps clear of them, or makes room.
  const lay = (room: Box) => {
    const scale = sketchScale(right_ft - left_ft, bottom_ft - top_ft, room.right - room.left - 2 * PAD, room.bottom - room.top - 2 * PAD, system)
    const k = scale.pointsPerFoot
    const offX = (room.left + room.right) / 2 - ((left_ft + right_ft) / 2) * k, offY = (room.top + room.bottom) / 2 - ((top_ft + bottom_ft) / 2) * k
    return { scale, k, offX, offY, foot: room }
  }
  const whole = lay(box)
  const isClear = sketch.rects.every(({ x_ft, y_ft, across_ft, down_ft }) => corners.every((one) =>
    isApart(one, { left: whole.offX + x_ft * whole.k, top: whole.offY + y_ft * whole.k, right: whole.offX + (x_ft + across_ft) * whole.k, bottom: whole.offY + (y_ft + down_ft) * whole.k })))
  const { scale, k, offX, offY, foot } = isClear ? whole : lay({ ...box, bottom: box.bottom - FOOT })
  const x = (at_ft: number) => offX + at_ft * k
  const y = (at_ft: number) => offY + at_ft * k
  page.rect(box, { fill: 'paper' })

  const boxOf = ({ x_ft, y_ft, across_ft, down_ft }: Sketch['rects'][number]): Box => ({ left: x(x_ft), top: y(y_ft), right: x(x_ft + across_ft), bottom: y(y_ft + down_ft) })
  for (const rect of sketch.rects) drawRect(page, rect.part, boxOf(rect))
  for (const { part, points } of sketch.lines) {
    const { isArrow, ...look } = lineLooks[part]
    const line = points.flatMap(([x_ft, y_ft]) => [x(x_ft), y(y_ft)])
    page.shape(pathOf(line), look)
    const [ax = 0, ay = 0, bx = 0, by = 0] = line.slice(-4)
    if (isArrow) drawArrow(page, bx, by, Math.atan2(by - ay, bx - ax), part === 'leaving', part === 'backing' ? 0.8 : 1.3)
  }
  for (const { part, x_ft, y_ft } of sketch.spots) drawSpot(page, part, x(x_ft), y(y_ft))

  const spotBoxes = sketch.spots.map(({ x_ft, y_ft }) => boxAround({ x: x(x_ft), y: y(y_ft) }, 11, 11))
  const inside = sketch.rects.filter(({ part }) => part !== 'road' && part !== 'lane' && part !== 'water').map((rect) => ({ rect, box: boxOf(rect) }))
  const outside: { texts: readonly string[]; box: Box }[] = []
  for (const one of inside) {
    const texts = words.rect(one.rect.part, one.rect.itemId, one.rect.number)
    if (!writeInside(page, measure, texts, one.box, one.rect.part === 'pumper')) outside.push({ texts, box: one.box })
  }
  const wish = (text: string, middleX: number, middleY: number, weight: Weight, isAlong = false): LabelWish<{ lines: string[]; weight: Weight }> => {
    const lines = wrap(measure, text, 150, TYPE, weight)
    const across = Math.max(...lines.map((line) => measure.across(line, TYPE, weight))) + 4, down = lines.length * TYPE * LEADING + 1
    const around = [0, 8, 16, 26, 40, 60].flatMap((gap) => [
      { x: middleX + gap + across / 2 + 4, y: middleY }, { x: middleX - gap - across / 2 - 4, y: middleY }, { x: middleX, y: middleY + gap + down / 2 + 4 }, { x: middleX, y: middleY - gap - down / 2 - 4 },
    ])
    const upright = [{ x: middleX, y: middleY - down / 2 - 4 }, { x: middleX, y: middleY + down / 2 + 4 }]
    return { what: { lines, weight }, across, down, places: isAlong ? [...upright, ...around] : around }
  }
  const lineRooms = sketch.lines.flatMap(({ points }) => points.slice(1).flatMap((to, i) => {
    const from = points[i] ?? to
    return Array.from({ length: 9 }, (_, n) => boxAround({ x: x(from[0] + ((to[0] - from[0]) * n) / 8), y: y(from[1] + ((to[1] - from[1]) * n) / 8) }, 5, 5))
  }))
  const water = sketch.rects.find(({ part }) => part === 'water')
  const hydrant = sketch.spots.find(({ part }) => part === 'hydrant')
  const seen = new Set<string>()
  const wishes = [
    ...outside.map(({ texts, box: at }) => wish(texts.at(-1) ?? '', (at.left + at.right) / 2, (at.top + at.bottom) / 2, 'bold')),
    ...sketch.lines.flatMap(({ part, number, points }) => {
      const text = words.line(part, number)
      if (text === '' || seen.has(text)) return []
      seen.add(text)
      const [a = [0, 0], b = a] = [points[0], points.at(-1)]
      return [wish(text, x((a[0] + b[0]) / 2), y((a[1] + b[1]) / 2), 'regular', part === 'arriving' || part === 'leaving')]
    }),
    ...(hydrant && !water ? [wish(words.rect('water', undefined, undefined)[0] ?? '', x(hydrant.x_ft), y(hydrant.y_ft), 'bold')] : []),
    ...(water ? [wish(words.rect('water', undefined, undefined)[0] ?? '', x(water.x_ft) + 24, y(water.y_ft + water.down_ft) - 10, 'bold')] : []),
  ].filter(({ what }) => what.lines.join('') !== '')
  const { placed } = placeLabels(wishes, { left: foot.left + 3, top: foot.top + 3, right: foot.right - 3, bottom: foot.bottom - 1 }, [...corners, ...inside.map(({ box: own }) => own), ...lineRooms, ...spotBoxes])
  for (const { what, x: at, y: middle, box: own } of placed) {
    page.rect({ left: own.left + 1, top: own.top + 1, right: own.right - 1, bottom: own.bottom - 1 }, { fill: 'paper', opacity: 0.85 })
    what.lines.forEach((line, i) => { page.line(line, at, middle - (what.lines.length * TYPE * LEADING) / 2 + i * TYPE * LEADING, { size: TYPE, weight: what.weight }, 'middle') })
  }

  const bar = scaleBar(METRES_PER_FOOT / k, 90, system)
  drawScaleBar(page, bar, box.left + (sketch.x_deg === undefined ? 10 : 46), box.bottom - 14)
  if (sketch.x_deg !== undefined) drawNorth(page, box.left + 20, box.bottom - 20, Math.PI / 2 - (sketch.x_deg * Math.PI) / 180)
  page.line(scale.label, box.right - 8, box.bottom - 19, { size: 8, weight: 'bold' }, 'right')
  page.rect(box, { stroke: 'ink', width: 1 })
  return scale
}

function drawRect(page: Page, part: SketchRectPart, box: Box): void {
  page.rect(box, rectLooks[part])
  const { left, top, right, bottom } = box
  if (part === 'road') {
    for (const y of [top, bottom]) page.rule(left, right, y, 1.2, 'casing')
    page.shape(pathOf([left, (top + bottom) / 2, right, (top + bottom) / 2]), { stroke: 'line', width: 0.9, dash: [8, 6] })
  }
  if (part === 'water' || part === 'tank') {
    page.shape(hatchLines([[left, top, right, top, right, bottom, left, bottom]], 4).map((line) => pathOf(line)).join(''), { stroke: 'water', width: 0.25 })
    if (part === 'water') page.shape(pathOf([left, top, right, top]), { stroke: 'water', width: 1.6 })
    else page.rect({ left: left + 2, top: top + 2, right: right - 2, bottom: bottom - 2 }, { stroke: 'water', width: 0.5 })
  }
}

function drawSpot(page: Page, part: Sketch['spots'][number]['part'], x: number, y: number): void {
  const ring = (radius: number) => `M${x - radius} ${y}A${radius} ${radius} 0 1 1 ${x + radius} ${y}A${radius} ${radius} 0 1 1 ${x - radius} ${y}Z`
  if (part === 'spotter') page.shape(`${ring(2.6)}M${x} ${y + 2.6}L${x} ${y + 8}M${x - 4} ${y + 4.6}L${x + 4} ${y + 4.6}`, { fill: 'paper', stroke: 'ink', width: 1.1 })
  else if (part === 'hydrant') page.shape(`${ring(4.5)}M${x - 4.5} ${y}L${x + 4.5} ${y}M${x} ${y - 4.5}L${x} ${y + 4.5}`, { fill: 'paper', stroke: 'ink', width: 1.2 })
  else page.shape(`M${x - 4} ${y - 3}L${x + 4} ${y - 3}L${x + 4} ${y + 4}L${x - 4} ${y + 4}ZM${x - 4} ${y + 0.5}L${x + 4} ${y + 0.5}M${x} ${y - 3}L${x} ${y + 4}`, { fill: 'paper', stroke: 'ink', width: 1 })
}

/** The fullest text that fits a shape, level or upright. @returns where it stands; undefined where none fits */
function writeInside(page: Page, measure: Measure, texts: readonly string[], box: Box, isOnInk: boolean): boolean {
  const across = box.right - box.left - 5, down = box.bottom - box.top - 3
  const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2]
  const look = { size: TYPE, weight: 'bold' as const, ink: isOnInk ? 'paper' as const : 'ink' as const }
  for (const text of texts) {
    const lines = across < 12 ? [] : wrap(measure, text, across, TYPE, 'bold')
    const isWhole = lines.length > 0 && lines.join(' ') === measure.clean(text).split(' ').filter((one) => one !== '').join(' ')
    if (isWhole && lines.length * TYPE * LEADING <= down + (lines.length === 1 ? 3 : 0)) {
      const half = (lines.length * TYPE * LEADING) / 2
      const width = Math.max(...lines.map((line) => measure.across(line, TYPE, 'bold')))
      if (!isOnInk) page.rect({ left: x - width / 2 - 2, top: y - half, right: x + width / 2 + 2, bottom: y + half }, { fill: 'paper', opacity: 0.8 })
      lines.forEach((line, i) => { page.line(line, x, y - half + i * TYPE * LEADING, look, 'middle') })
      return true
    }
    const length = measure.across(measure.clean(text), TYPE, 'bold')
    if (length <= down && TYPE * LEADING <= across + 3) {
      page.turned(text, x, y, -Math.PI / 2, look)
      return true
    }
  }
  return false
}
