import { arrowPlaces } from '@/app/_map/paint/arrow-places'
import { offsetLine } from '@/app/_map/paint/offset-line'
import { clipLine, spotOf, thinned, type PaperView } from '@/lib/book'
import type { Point } from '@/lib/geo'
import { pathOf, type Page } from '../page/page'

/** Loaded and empty tenders, the way of a vehicle from its station, a hose lay. */
export type WayLook = 'loaded' | 'empty' | 'approach' | 'lay'
export type MapWay = { readonly path: readonly Point[]; readonly look: WayLook; /** No road is known: a straight line. */ readonly isStraight?: boolean }

/** To the right of the road, so that there and back are both seen. */
const OFFSET = 2.6
const ARROW_GAP = 62
const order: readonly WayLook[] = ['approach', 'empty', 'loaded', 'lay']

const looks: Readonly<Record<WayLook, { readonly ink: 'water' | 'ink' | 'quiet'; readonly width: number; readonly dash?: readonly number[] }>> = {
  loaded: { ink: 'water', width: 2.4 },
  empty: { ink: 'ink', width: 1.3, dash: [6, 3.5] },
  approach: { ink: 'quiet', width: 0.9, dash: [1.2, 2.6] },
  lay: { ink: 'ink', width: 2, dash: [9, 2.5, 1.5, 2.5] },
}

/** Ways over the map: what is loaded full, with full arrows; what is empty dashed, with open ones; told apart without colour. */
export function drawRoutes(page: Page, ways: readonly MapWay[], view: PaperView): void {
  const lines = unlike(ways).map(({ path, look, isStraight }) => {
    const flat = thinned(path.flatMap((point) => { const { x, y } = spotOf(view, point); return [x, y] }), 1.2)
    return { look, isStraight: isStraight ?? false, parts: clipLine(look === 'lay' || look === 'approach' ? flat : offsetLine(flat, OFFSET), view.box) }
  }).sort((a, b) => order.indexOf(a.look) - order.indexOf(b.look))
  for (const { look, parts } of lines) if (look !== 'approach') page.shape(parts.map((part) => pathOf(part)).join(''), { stroke: 'paper', width: looks[look].width + 2, isRound: true })
  for (const { look, parts, isStraight } of lines) {
    const { ink, width, dash } = looks[look]
    page.shape(parts.map((part) => pathOf(part)).join(''), { stroke: ink, width, isRound: !dash, ...(isStraight ? { dash: [width, 2.4 * width] } : dash && { dash }) })
  }
  for (const { look, parts } of lines) if (look !== 'approach')
    for (const part of parts) for (const { x, y, angle } of arrowPlaces(part, ARROW_GAP)) drawArrow(page, x, y, angle, look === 'empty')
}

/** Several tenders on one way are one line. */
function unlike(ways: readonly MapWay[]): MapWay[] {
  const seen = new Map<string, MapWay>()
  for (const way of ways) {
    const [first] = way.path, last = way.path.at(-1)
    if (first && last) seen.set([way.look, way.path.length, first.lat, first.lon, last.lat, last.lon].join(), way)
  }
  return [...seen.values()]
}

export function drawArrow(page: Page, x: number, y: number, angle: number, isOpen: boolean, scale = 1): void {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const path = pathOf([[5, 0], [-4, -4], [-1.8, 0], [-4, 4]].flatMap(([dx = 0, dy = 0]) => [x + scale * (dx * cos - dy * sin), y + scale * (dx * sin + dy * cos)]), true)
  page.shape(path, { stroke: 'paper', width: 2.2, isRound: true })
  page.shape(path, { fill: isOpen ? 'paper' : 'ink', stroke: 'ink', width: 0.8, isRound: true })
}

/** A sample of a way for the key. */
export function drawWaySample(page: Page, look: WayLook, x: number, y: number, across: number): void {
  const { ink, width, dash } = looks[look]
  page.shape(pathOf([x, y, x + across, y]), { stroke: ink, width, ...(dash && { dash }) })
  if (look !== 'approach') drawArrow(page, x + across / 2, y, 0, look === 'empty')
}
