import type { Box } from '@/lib/book'
import type { Ink, Mark, PageMarks, ShapeMark, Weight } from './marks'
import { ASCENT, LEADING, wrap, type Measure } from './measure'
import { papers, type Paper } from './paper'

export type TextLook = { readonly size?: number; readonly weight?: Weight; readonly ink?: Ink }
export type Align = 'left' | 'middle' | 'right'

export const BODY = 9.5

const short = (value: number): string => String(Math.round(value * 100) / 100)

/** A path through x, y, x, y … */
export function pathOf(line: readonly number[], isClosed = false): string {
  let path = ''
  for (let i = 0; i + 1 < line.length; i += 2) path += `${i === 0 ? 'M' : 'L'}${short(line[i] ?? 0)} ${short(line[i + 1] ?? 0)}`
  return isClosed ? `${path}Z` : path
}

/** A page being written: everything on it is kept as marks until the book is whole and its pages can be counted. */
export class Page implements PageMarks {
  readonly across: number
  readonly down: number
  readonly marks: Mark[] = []
  readonly #measure: Measure

  constructor(paper: Paper, measure: Measure) {
    this.across = papers[paper].across
    this.down = papers[paper].down
    this.#measure = measure
  }

  /** One line that is known to fit. @param y of its top */
  line(text: string, x: number, y: number, { size = BODY, weight = 'regular', ink = 'ink' }: TextLook = {}, align: Align = 'left'): void {
    const clean = this.#measure.clean(text)
    if (clean.trim() === '') return
    const across = this.#measure.across(clean, size, weight)
    this.marks.push({ kind: 'text', x: align === 'left' ? x : align === 'right' ? x - across : x - across / 2, y: y + ASCENT * size, text: clean, size, weight, ink, across })
  }

  /** A text broken to fit. @returns how far down it goes */
  text(text: string, x: number, y: number, across: number, look: TextLook = {}, align: Align = 'left'): number {
    const { size = BODY, weight = 'regular' } = look
    const lines = wrap(this.#measure, text, across, size, weight)
    lines.forEach((line, i) => { this.line(line, align === 'left' ? x : align === 'right' ? x + across : x + across / 2, y + i * size * LEADING, look, align) })
    return lines.length * size * LEADING
  }

  /** A line turned about its middle. */
  turned(text: string, x: number, y: number, angle: number, { size = BODY, weight = 'regular', ink = 'ink' }: TextLook = {}): void {
    const clean = this.#measure.clean(text)
    const across = this.#measure.across(clean, size, weight)
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
    const drop = size * 0.34
    this.marks.push({ kind: 'text', x: x - (across / 2) * cos - drop * sin, y: y - (across / 2) * sin + drop * cos, text: clean, size, weight, ink, across, ...(angle !== 0 && { angle }) })
  }

  shape(path: string, look: Omit<ShapeMark, 'kind' | 'path'>): void {
    if (path !== '') this.marks.push({ kind: 'shape', path, ...look })
  }

  rect({ left, top, right, bottom }: Box, look: Omit<ShapeMark, 'kind' | 'path'>): void {
    this.shape(pathOf([left, top, right, top, right, bottom, left, bottom], true), look)
  }

  rule(left: number, right: number, y: number, width = 0.6, stroke: Ink = 'line'): void {
    this.shape(pathOf([left, y, right, y]), { stroke, width })
  }

  link(left: number, top: number, across: number, down: number, to: string): void {
    this.marks.push({ kind: 'link', left, top, across, down, to })
  }
}
