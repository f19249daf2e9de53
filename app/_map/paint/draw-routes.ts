import { keptMercatorLine } from '../mercator'
import type { MapRoute } from '../map-types'
import type { ScreenFrame } from '../leaflet/screen-canvas'
import { arrowPlaces } from './arrow-places'
import { offsetLine } from './offset-line'
import type { Palette } from './palette'
import type { Pen } from './pen'
import { thinLine } from './thin-line'

/** Ways lie this far to the right of the road, so that there and back are both seen. */
const OFFSET_PX = 3.5
const ARROW_GAP_PX = 110

/**
 * Draws the ways: loaded a full line in the blue of the water it carries, empty a dashed
 * one, a straight line that is no road dotted; arrows show which way.
 */
export function drawRoutes(frame: ScreenFrame, routes: readonly MapRoute[], palette: Palette): void {
  const { context } = frame
  context.lineCap = 'round'
  context.lineJoin = 'round'
  const lines = unlike(routes).map((route) => ({ route, line: screenLine(frame, route) })).filter(({ line }) => line.length >= 4)
  for (const { route, line } of lines) {
    context.strokeStyle = route.isChosen ? palette.chosen : palette.routeHalo
    context.lineWidth = widthOf(route) + (route.isChosen ? 5 : 3)
    context.globalAlpha = route.isQuiet ? 0.5 : 0.9
    stroke(context, line, [])
  }
  for (const { route, line } of lines) {
    context.strokeStyle = context.fillStyle = route.load === 'full' ? palette.loaded : palette.empty
    context.globalAlpha = route.isQuiet ? 0.45 : 1
    context.lineWidth = widthOf(route)
    stroke(context, line, dashOf(route))
  }
  for (const { route, line } of lines) {
    context.globalAlpha = route.isQuiet ? 0.45 : 1
    for (const { x, y, angle } of arrowPlaces(line, ARROW_GAP_PX)) drawArrow(context, x, y, angle, palette.routeHalo, route.load === 'full' ? palette.loaded : palette.empty)
  }
  context.globalAlpha = 1
}

/** Several tenders on one way are one line. */
function unlike(routes: readonly MapRoute[]): readonly MapRoute[] {
  const seen = new Map<string, MapRoute>()
  for (const route of routes) {
    const [first] = route.path
    const last = route.path.at(-1)
    if (!first || !last) continue
    const key = [route.load, isDotted(route), route.path.length, first.lat, first.lon, last.lat, last.lon].join()
    if (!seen.has(key) || route.isChosen) seen.set(key, route)
  }
  return [...seen.values()].sort((a, b) => Number(a.isChosen ?? false) - Number(b.isChosen ?? false) || Number(a.load === 'full') - Number(b.load === 'full'))
}

const isDotted = (route: MapRoute): boolean => route.isStraight ?? route.path.length < 3
const widthOf = (route: MapRoute): number => (route.load === 'full' ? 4 : 2.5)

function dashOf(route: MapRoute): number[] {
  const width = widthOf(route)
  if (isDotted(route)) return [0.1, 2.2 * width]
  return route.load === 'full' ? [] : [9, 7]
}

function screenLine({ worldSize, origin }: ScreenFrame, { path }: MapRoute): number[] {
  const line: number[] = []
  keptMercatorLine(path).forEach((value, i) => line.push(value * worldSize - (i % 2 === 0 ? origin.x : origin.y)))
  return offsetLine(thinLine(line, 2), OFFSET_PX)
}

function stroke(context: Pen, line: readonly number[], dash: number[]): void {
  context.setLineDash(dash)
  context.beginPath()
  for (let i = 0; i + 1 < line.length; i += 2) {
    if (i === 0) context.moveTo(line[0] ?? 0, line[1] ?? 0)
    else context.lineTo(line[i] ?? 0, line[i + 1] ?? 0)
  }
  context.stroke()
}

function drawArrow(context: Pen, x: number, y: number, angle: number, halo: string, fill: string): void {
  context.save()
  context.translate(x, y)
  context.rotate(angle)
  context.setLineDash([])
  context.beginPath()
  context.moveTo(7, 0)
  context.lineTo(-5, -5.5)
  context.lineTo(-2.5, 0)
  context.lineTo(-5, 5.5)
  context.closePath()
  context.strokeStyle = halo
  context.lineWidth = 2
  context.stroke()
  context.fillStyle = fill
  context.fill()
  context.restore()
}
