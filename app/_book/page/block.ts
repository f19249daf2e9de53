import type { Ink } from './marks'
import { LEADING, wrap, type Measure } from './measure'
import { BODY, type Align, type Page, type TextLook } from './page'

/** A piece of a sheet that is set whole: it goes on the next page when it does not fit on this. */
export type Block = {
  readonly down: number
  draw(page: Page, x: number, y: number): void
  /** Stays on the page of what follows. */
  readonly keepsNext?: boolean
  /** Set again at the head of the next page when a break falls before this block. */
  readonly head?: Block
}

/** Height of blocks one under the other. */
export const downOf = (blocks: readonly Block[]): number => blocks.reduce((sum, { down }) => sum + down, 0)

export const space = (down: number): Block => ({ down, draw: () => undefined })

/** A text, line by line, so that a long one may run over to the next page. */
export function paragraph(measure: Measure, across: number, text: string, look: TextLook = {}, after = 3): Block[] {
  const { size = BODY, weight = 'regular' } = look
  return [...wrap(measure, text, across, size, weight).map((line): Block => ({ down: size * LEADING, draw: (page, x, y) => { page.line(line, x, y, look) } })), ...(after > 0 ? [space(after)] : [])]
}

/** Heading of a part of a sheet. */
export function heading(measure: Measure, across: number, text: string): Block {
  const size = 11
  const lines = wrap(measure, text, across, size, 'bold')
  return {
    down: 6 + lines.length * size * LEADING + 4, keepsNext: true,
    draw: (page, x, y) => {
      lines.forEach((line, i) => { page.line(line, x, y + 5 + i * size * LEADING, { size, weight: 'bold' }) })
      page.rule(x, x + across, y + 6.5 + lines.length * size * LEADING, 0.8, 'ink')
    },
  }
}

/** Texts with a mark before each. */
export function list(measure: Measure, across: number, items: readonly { readonly text: string; readonly sign?: string; readonly isStrong?: boolean }[], size = BODY): Block[] {
  const indent = 12
  return items.flatMap(({ text, sign = '•', isStrong = false }) => {
    const look: TextLook = { size, ...(isStrong && { weight: 'bold' as const }) }
    const lines = wrap(measure, text, across - indent, size, isStrong ? 'bold' : 'regular')
    return lines.map((line, i): Block => ({
      down: size * LEADING + (i === lines.length - 1 ? 2 : 0), keepsNext: i < lines.length - 1 && i === 0,
      draw: (page, x, y) => {
        if (i === 0) page.line(sign, x, y, { size, weight: 'bold' })
        page.line(line, x + indent, y, look)
      },
    }))
  })
}

export type Column = { readonly head: string; readonly share: number; readonly align?: Align }
export type Cell = string | { readonly text: string; readonly isStrong?: boolean; readonly quiet?: string }

const CELL_GAP = 7

/** A table: its head is set again on every page it runs over to. */
export function table(measure: Measure, across: number, columns: readonly Column[], rows: readonly (readonly Cell[])[], size = 8.8, pad = 5): Block[] {
  const shares = columns.reduce((sum, { share }) => sum + share, 0)
  const widths = columns.map(({ share }) => (share / shares) * across)
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, one) => sum + one, 0))
  const inner = widths.map((width, i) => width - (i === columns.length - 1 ? 0 : CELL_GAP))
  const row = (cells: readonly Cell[], look: TextLook, rule: { readonly ink: Ink; readonly width: number }, fill?: Ink): Omit<Block, 'head'> => {
    const set = cells.map((cell, i) => {
      const { text, isStrong = false, quiet = '' } = typeof cell === 'string' ? { text: cell } : cell
      const weight = isStrong ? 'bold' : (look.weight ?? 'regular')
      return { lines: wrap(measure, text, inner[i] ?? 1, look.size ?? size, weight), weight, quietLines: quiet === '' ? [] : wrap(measure, quiet, inner[i] ?? 1, size - 1, 'regular') }
    })
    const step = (look.size ?? size) * LEADING, quietStep = (size - 1) * LEADING
    const down = Math.max(...set.map(({ lines, quietLines }) => lines.length * step + quietLines.length * quietStep)) + pad
    return {
      down,
      draw: (page, x, y) => {
        if (fill) page.rect({ left: x, top: y, right: x + across, bottom: y + down }, { fill })
        set.forEach(({ lines, weight, quietLines }, i) => {
          const align = columns[i]?.align ?? 'left'
          const at = x + (lefts[i] ?? 0) + (align === 'right' ? (inner[i] ?? 0) : 0)
          lines.forEach((line, n) => { page.line(line, at, y + pad / 2 + n * step, { ...look, size: look.size ?? size, weight }, align) })
          quietLines.forEach((line, n) => { page.line(line, at, y + pad / 2 + lines.length * step + n * quietStep, { size: size - 1, ink: 'quiet' }, align) })
        })
        page.rule(x, x + across, y + down, rule.width, rule.ink)
      },
    }
  }
  const head: Block = { ...row(columns.map((column) => column.head), { size: size - 0.8, weight: 'bold', ink: 'quiet' }, { ink: 'ink', width: 0.8 }), keepsNext: true }
  return [head, ...rows.map((cells): Block => ({ ...row(cells, { size }, { ink: 'hair', width: 0.5 }), head }))]
}

/** Names and what they are, in two columns of text. */
export function facts(measure: Measure, across: number, rows: readonly (readonly [name: string, value: string])[], size = BODY, nameShare = 0.36): Block[] {
  const nameAcross = across * nameShare
  return rows.filter(([, value]) => value.trim() !== '').map(([name, value]): Block => {
    const names = wrap(measure, name, nameAcross - 8, size, 'regular'), values = wrap(measure, value, across - nameAcross, size, 'bold')
    const down = Math.max(names.length, values.length) * size * LEADING + 3
    return {
      down,
      draw: (page, x, y) => {
        names.forEach((line, i) => { page.line(line, x, y + 1 + i * size * LEADING, { size, ink: 'quiet' }) })
        values.forEach((line, i) => { page.line(line, x + nameAcross, y + 1 + i * size * LEADING, { size, weight: 'bold' }) })
        page.rule(x, x + across, y + down - 0.5, 0.4, 'hair')
      },
    }
  })
}

/** Columns side by side as one block: for what is short. */
export function sideBySide(columns: readonly { readonly across: number; readonly blocks: readonly Block[] }[], gap: number): Block {
  const heights = columns.map(({ blocks }) => downOf(blocks))
  return {
    down: Math.max(...heights),
    draw: (page, x, y) => {
      let left = x
      for (const { across, blocks } of columns) {
        let top = y
        for (const block of blocks) {
          block.draw(page, left, top)
          top += block.down
        }
        left += across + gap
      }
    },
  }
}

/** A frame around blocks, with a sign where it must be seen. */
export function framed(across: number, blocks: readonly Block[], { fill, width = 1.2 }: { readonly fill?: Ink; readonly width?: number } = {}): Block {
  const pad = 7
  const down = downOf(blocks) + 2 * pad - 2
  return {
    down: down + 5,
    draw: (page, x, y) => {
      page.rect({ left: x, top: y, right: x + across, bottom: y + down }, { stroke: 'ink', width, ...(fill && { fill }) })
      let top = y + pad
      for (const block of blocks) {
        block.draw(page, x + pad, top)
        top += block.down
      }
    },
  }
}

/** Width inside a frame. */
export const insideFrame = (across: number): number => across - 14
