import type { SupplyResult } from '@/lib/supply'
import { formatAsked, formatFrom, formatGiven, formatShortBy, formatSpare, linkText, say, timeWords, sayIssue, type NameOf, type UnitSystem } from '../_text'

/** One line of the table: what each plan says, and in which the best stands. */
export type FigureLine = { key: string; label: string; cells: readonly { text: string; isFigure: boolean; isBest: boolean }[] }

type Column = { result: SupplyResult; names: NameOf }
type Cell = { value?: number; text: string }

/** Values nearer than this are alike. */
const ALIKE = 1e-6

/** The figures of several plans, line by line; a figure that is missing says why. */
export function figureLines(columns: readonly Column[], system: UnitSystem): FigureLine[] {
  const flowOf = ({ needed_gpm }: SupplyResult) => (value: number): Cell => ({ value, text: formatGiven(value, system, needed_gpm) })
  const time = (value: number): Cell => ({ value, text: formatFrom(value) })
  const blocked = ({ result, names }: Column): Cell | undefined => {
    if (result.sustainable_gpm !== null) return undefined
    const reason = result.issues.find(({ severity }) => severity === 'block')
    return { text: reason ? say('compare.why.blocked', { reason: sayIssue(reason, names, system) }) : say('compare.why.blocked-plain') }
  }
  const line = (key: FigureKey, of: (column: Column) => Cell, best?: 'most' | 'least'): FigureLine => {
    const cells = columns.map((column) => (key === 'needed' ? undefined : blocked(column)) ?? of(column))
    const isBest = bestOf(cells.map(({ value }) => value), best)
    return { key, label: say(`compare.row.${key}`), cells: cells.map(({ text, value }, index) => ({ text, isFigure: value !== undefined, isBest: isBest[index] ?? false })) }
  }
  const known = (value: number | null, show: (value: number) => Cell, missing: string): Cell => (value === null ? { text: missing } : show(value))
  const never = say('compare.why.never')
  return [
    line('sustainable', ({ result }) => known(result.sustainable_gpm, flowOf(result), never), 'most'),
    line('needed', ({ result }) => known(result.needed_gpm, (value) => ({ value, text: formatAsked(value, system) }), say('compare.why.no-need'))),
    line('spare', ({ result }) => (result.needed_gpm === null ? { text: say('compare.why.no-need') } : spare(result.sustainable_gpm ?? 0, result.needed_gpm, system)), 'most'),
    line('stored', ({ result }) => known(result.stored_gpm, flowOf(result), never), 'most'),
    line('hauled', ({ result }) => known(result.hauledCapacity_gpm, flowOf(result), never), 'most'),
    line('hand', ({ result }) => known(result.hand_gpm, flowOf(result), never), 'most'),
    line('firstWater', ({ result }) => known(result.firstWater_s, time, say('compare.why.no-engine')), 'least'),
    line('ready', ({ result }) => known(result.supplyReady_s, time, never), 'least'),
    line('gap', ({ result }) => known(result.gap_s, (value) => ({ value, text: timeWords('gap_s', result) }), never), 'least'),
    line('short', ({ result }) => known(result.short_s, time, say('compare.why.no-demand')), 'least'),
    line('limit', ({ result, names }) => ({ text: result.limitingLink ? linkText(result.limitingLink, names) : say('compare.why.no-limit') })),
    line('tenders', ({ result }) => { const count = result.tenders.filter(({ usable_gal }) => usable_gal !== null).length; return { value: count, text: String(count) } }),
    line('assumed', ({ result }) => { const count = result.assumptions.filter(({ mark }) => mark === 'assumed').length; return { value: count, text: String(count) } }, 'least'),
  ]
}

type FigureKey = 'sustainable' | 'needed' | 'spare' | 'stored' | 'hauled' | 'hand' | 'firstWater' | 'ready' | 'gap' | 'short' | 'limit' | 'tenders' | 'assumed'

function spare(flow_gpm: number, needed_gpm: number, system: UnitSystem): Cell {
  const short = formatShortBy(flow_gpm, needed_gpm, system)
  return { value: flow_gpm - needed_gpm, text: short === undefined ? `+${formatSpare(flow_gpm, needed_gpm, system) ?? ''}` : `−${short}` }
}

/** Which values are the best; none where fewer than two are known or all are alike. */
export function bestOf(values: readonly (number | undefined)[], best: 'most' | 'least' | undefined): boolean[] {
  const known = values.filter((value) => value !== undefined)
  const top = best === 'least' ? Math.min(...known) : Math.max(...known)
  if (best === undefined || known.length < 2 || known.every((value) => Math.abs(value - top) <= ALIKE)) return values.map(() => false)
  return values.map((value) => value !== undefined && Math.abs(value - top) <= ALIKE)
}
