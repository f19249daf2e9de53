import type { Box } from '../crowded-names'
import type { ScreenFrame } from '../leaflet/screen-canvas'
import type { MapLabel } from './labels'
import type { Palette } from './palette'
import type { Pen } from './pen'

type Written = Box & { text: string }

/** The same name is not written again nearer than this. */
const REPEAT_PX = 320
const MOST = 160

/**
 * Writes the names, most important first, each only where nothing is written yet.
 *
 * @param over what lies over the map and is not to be written under, in the frame's pixels
 */
export function drawLabels(frame: ScreenFrame, labels: readonly MapLabel[], palette: Palette, over: readonly Box[] = []): void {
  const { context, zoom, topLeft, size } = frame
  const taken: Written[] = []
  const right = topLeft.x + size.x
  const bottom = topLeft.y + size.y
  context.textAlign = 'center'
  context.textBaseline = 'middle'
  context.lineJoin = 'round'
  for (const label of labels) {
    if (taken.length >= MOST) break
    if (zoom < label.firstZoom) continue
    const found = spotOf(frame, label)
    if (!found || found.x < topLeft.x || found.x > right || found.y < topLeft.y || found.y > bottom) continue
    context.font = fontOf(label, zoom, palette)
    const width = context.measureText(label.text).width
    if (label.line.length > 2 && width > found.length_px) continue
    const spot = wholeSpot(found, width, frame.view)
    if (!spot) continue
    const box = boxOf(spot, width, label.text)
    if (taken.some((other) => isHit(other, box)) || over.some((other) => isHit(other, box))) continue
    taken.push(box)
    write(context, label, spot, palette)
  }
}

export type Spot = { x: number; y: number; angle: number; length_px: number }

/** Room between a name and the edge. */
const EDGE_PX = 3
const HALF_HEIGHT_PX = 8

/**
 * Where a name is written so that the edge of the map does not cut it off: an upright one is moved in as long as its own
 * place is in sight; one that lies along a road, or whose place is out of sight, is left out.
 *
 * @param width_px of the name
 */
export function wholeSpot(spot: Spot, width_px: number, { left, top, right, bottom }: ScreenFrame['view']): Spot | undefined {
  const { x, y, angle } = spot
  const halfX = (Math.abs(Math.cos(angle)) * width_px) / 2 + EDGE_PX, halfY = (Math.abs(Math.sin(angle)) * width_px) / 2 + HALF_HEIGHT_PX
  if (x - halfX >= left && x + halfX <= right && y - halfY >= top && y + halfY <= bottom) return spot
  // Wholly out of sight it waits for the next drag.
  if (x + halfX <= left || x - halfX >= right || y + halfY <= top || y - halfY >= bottom) return spot
  if (angle !== 0 || x < left || x > right || y < top || y > bottom || 2 * halfX > right - left) return undefined
  return { ...spot, x: Math.min(Math.max(x, left + halfX), right - halfX), y: Math.min(Math.max(y, top + halfY), bottom - halfY) }
}

/** A point's own place; of a line the middle of its longest straight piece. */
function spotOf({ worldSize, origin }: ScreenFrame, { line }: MapLabel): Spot | undefined {
  if (line.length === 2) return { x: (line[0] ?? 0) * worldSize - origin.x, y: (line[1] ?? 0) * worldSize - origin.y, angle: 0, length_px: Infinity }
  let best: Spot | undefined
  for (let i = 0; i + 3 < line.length; i += 2) {
    const [x = 0, y = 0, nextX = 0, nextY = 0] = [line[i], line[i + 1], line[i + 2], line[i + 3]]
    const length_px = Math.hypot(nextX - x, nextY - y) * worldSize
    if (best && length_px <= best.length_px) continue
    const angle = Math.atan2(nextY - y, nextX - x)
    const upright = angle > Math.PI / 2 ? angle - Math.PI : angle < -Math.PI / 2 ? angle + Math.PI : angle
    best = { x: ((x + nextX) / 2) * worldSize - origin.x, y: ((y + nextY) / 2) * worldSize - origin.y, angle: upright, length_px }
  }
  return best && { ...best, length_px: best.length_px * 1.15 }
}

function fontOf({ kind, rank }: MapLabel, zoom: number, { font, isBold }: Palette): string {
  if (kind === 'place') return `${isBold || rank <= 2 ? 650 : 500} ${rank <= 1 ? 15 : rank === 2 ? 13.5 : 12}px ${font}`
  if (kind === 'water') return `${isBold ? 600 : 450} 11.5px ${font}`
  return `${isBold ? 600 : 450} ${zoom >= 17 ? 12 : 11}px ${font}`
}

function boxOf({ x, y, angle }: Spot, width: number, text: string): Written {
  const halfX = (Math.abs(Math.cos(angle)) * width) / 2 + 8
  const halfY = (Math.abs(Math.sin(angle)) * width) / 2 + 9
  return { left: x - halfX, right: x + halfX, top: y - halfY, bottom: y + halfY, text }
}

function isHit(a: Box & { text?: string }, b: Written): boolean {
  const reach = a.text === b.text ? REPEAT_PX : 0
  return a.left - reach < b.right && a.right + reach > b.left && a.top - reach < b.bottom && a.bottom + reach > b.top
}

function write(context: Pen, { text, kind, rank }: MapLabel, { x, y, angle }: Spot, palette: Palette): void {
  context.save()
  context.translate(x, y)
  context.rotate(angle)
  context.strokeStyle = palette.halo
  context.lineWidth = 2.6
  context.strokeText(text, 0, 0)
  context.fillStyle = kind === 'water' ? palette.labelWater : kind === 'place' && rank <= 2 ? palette.labelStrong : palette.label
  context.fillText(text, 0, 0)
  context.restore()
}
