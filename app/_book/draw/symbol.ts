import { siteShapes, type SiteKind } from '@/app/_look/site-shapes'
import type { Ink } from '../page/marks'
import type { Page } from '../page/page'

const inkOf: Readonly<Record<string, Ink>> = { water: 'water', sheet: 'paper', ink: 'ink', 'amber-solid': 'amberSoft', 'on-water': 'paper', 'on-amber': 'ink' }

/** Symbol of a kind of place, as on the screen. @param size its edge in points, about the middle at x, y */
export function drawSymbol(page: Page, kind: SiteKind, x: number, y: number, size: number, letter?: string): void {
  const shape = siteShapes[kind]
  const scale = size / 24
  const at = { x: x - size / 2, y: y - size / 2, scale }
  page.shape(shape.path, { stroke: 'paper', width: 4.5, isRound: true, at })
  page.shape(shape.path, { fill: inkOf[shape.fill] ?? 'paper', stroke: inkOf[shape.stroke] ?? 'ink', width: 2, isRound: true, at })
  const text = letter ?? shape.letter
  const type = (text.length > 1 ? 9.6 : 12) * scale
  page.line(text, at.x + shape.letterX * scale, at.y + shape.letterY * scale - type * 0.66, { size: type, weight: 'bold', ink: inkOf[shape.ink] ?? 'ink' }, 'middle')
}
