import type { Ink } from '../page/marks'
import { downOf, framed, heading, insideFrame, list, paragraph, sideBySide, space, type Block } from '../page/block'
import { LEADING, wrap, type Measure } from '../page/measure'
import { say, type TextKey } from '@/app/_text'
import '@/app/_text/areas/book'
import type { CautionKind } from '@/app/_ui/caution'

export type Tile = { readonly label: string; readonly value: string; readonly note?: string; readonly isStrong?: boolean }

const TILE_GAP = 5

/** Figures in boxes, so many in a row; the strong ones in a heavy frame. */
export function tiles(measure: Measure, across: number, all: readonly Tile[], inRow: number): Block[] {
  const rows: Tile[][] = []
  for (let i = 0; i < all.length; i += inRow) rows.push(all.slice(i, i + inRow))
  return rows.map((row): Block => {
    const width = (across - TILE_GAP * (inRow - 1)) / inRow
    const inner = width - 12
    const set = row.map(({ label, value, note }) => ({
      labels: wrap(measure, label, inner, 7.6, 'regular'), values: wrap(measure, value, inner, 14, 'bold'), notes: note === undefined ? [] : wrap(measure, note, inner, 7.4, 'regular'),
    }))
    const labelDown = Math.max(...set.map(({ labels }) => labels.length)) * 7.6 * LEADING
    const down = Math.max(...set.map(({ values, notes }) => values.length * 14 * LEADING + notes.length * 7.4 * LEADING)) + labelDown + 8
    return {
      down: down + TILE_GAP,
      draw: (page, x, y) => {
        set.forEach(({ labels, values, notes }, i) => {
          const left = x + i * (width + TILE_GAP)
          page.rect({ left, top: y, right: left + width, bottom: y + down }, { stroke: 'ink', width: row[i]?.isStrong ? 1.8 : 0.7 })
          labels.forEach((line, n) => { page.line(line, left + 6, y + 3 + n * 7.6 * LEADING, { size: 7.6, ink: 'quiet' }) })
          values.forEach((line, n) => { page.line(line, left + 6, y + 3 + labelDown + n * 14 * LEADING, { size: 14, weight: 'bold' }) })
          notes.forEach((line, n) => { page.line(line, left + 6, y + 3 + labelDown + values.length * 14 * LEADING + n * 7.4 * LEADING, { size: 7.4 }) })
        })
      },
    }
  })
}

/** Lines left free to write on, each with what belongs there, so many in a row. */
export function writeIns(across: number, keys: readonly Extract<TextKey, `book.write.${string}`>[], inRow = 2): Block[] {
  const gap = 14
  const width = (across - gap * (inRow - 1)) / inRow
  const one = (key: (typeof keys)[number]): Block => ({
    down: 22,
    draw: (page, x, y) => {
      page.line(say(key), x, y + 1, { size: 7.4, ink: 'quiet' })
      page.rule(x, x + width, y + 21, 0.7, 'quiet')
    },
  })
  return Array.from({ length: Math.ceil(keys.length / inRow) }, (_, i) => sideBySide(keys.slice(i * inRow, (i + 1) * inRow).map((key) => ({ across: width, blocks: [one(key)] })), gap))
}

/** Short texts with a mark before each, in two columns of about the same length. */
export function inColumns(measure: Measure, across: number, items: Parameters<typeof list>[2], size = 8.4): Block[] {
  const gap = 14
  const width = (across - gap) / 2
  const sets = items.map((item) => list(measure, width, [item], size))
  const rows = Array.from({ length: Math.ceil(sets.length / 2) }, (_, i) => [sets[2 * i] ?? [], sets[2 * i + 1] ?? []] as const)
  return rows.map(([left, right]) => sideBySide(downOf(right) > 0 ? [{ across: width, blocks: left }, { across: width, blocks: right }] : [{ across: width, blocks: left }], gap))
}

/** Cautions of a sheet; whose decision it is stands at the foot of every page. */
export function cautions(measure: Measure, across: number, kinds: readonly CautionKind[]): Block[] {
  return [heading(measure, across, say('caution.title')), ...inColumns(measure, across, kinds.map((kind) => ({ text: say(`caution.${kind}`) })), 8.2)]
}

/** Words that must be seen first, in a frame of their own. */
export function warning(measure: Measure, across: number, text: string, fill?: Ink): Block {
  return framed(across, list(measure, insideFrame(across), [{ text, sign: '!', isStrong: true }], 11), { width: 1.8, ...(fill && { fill }) })
}

export const section = (measure: Measure, across: number, title: string, blocks: readonly Block[]): Block[] => (blocks.length === 0 ? [] : [heading(measure, across, title), ...blocks, space(2)])

export const note = (measure: Measure, across: number, text: string): Block[] => paragraph(measure, across, text, { size: 8.2, ink: 'quiet' }, 2)
