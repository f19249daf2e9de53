import { countUnmeasured, type SupplyResult } from '@/lib/supply'
import { formatAsked, formatGiven, formatShortBy, formatSpare, linkText, say, sayIssue, timeWords, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/compare'

/** What stands out in a cell, in a word. */
export type CellMark = { readonly look: 'good' | 'danger'; readonly text: string }

/** One line of the table: what each plan says, and what stands out. */
export type FigureLine = { readonly key: string; readonly label: string; readonly cells: readonly { readonly text: string; readonly isFigure: boolean; readonly mark?: CellMark }[] }

/** `isDoubting`: the dependable flow is still being worked out. */
type Column = { result: SupplyResult; names: NameOf; isDoubting?: boolean }
type Cell = { value?: number; text: string }
type Best = 'highest' | 'earliest' | 'shortest' | 'fewest'

/** Values nearer than this are alike. */
const ALIKE = 1e-6

/**
 * The figures of several plans, line by line; a figure that is missing says why.
 *
 * What counts is the need: a plan that meets it with less is not worse than one that exceeds it. So the dependable flow, and
 * the expected one, are each marked "meets the need" or "short by"; whether a plan meets it is told by the dependable flow, by
 * the expected one only until every plan's is known. The highest flow is marked only where no plan meets a need, and among
 * plans that meet it those that do with the fewest tenders.
 */
export function figureLines(columns: readonly Column[], system: UnitSystem): FigureLine[] {
  const flowOf = ({ needed_gpm }: SupplyResult) => (value: number): Cell => ({ value, text: formatGiven(value, system, needed_gpm) })
  const timeCell = (figure: 'firstWater_s' | 'supplyReady_s' | 'gap_s' | 'short_s') => ({ result }: Column): Cell => ({ ...(result[figure] !== null && { value: result[figure] }), text: timeWords(figure, result) })
  const blocked = ({ result, names }: Column): Cell | undefined => {
    if (result.sustainable_gpm !== null) return undefined
    const reason = result.issues.find(({ severity }) => severity === 'block')
    return { text: reason ? say('compare.why.blocked', { reason: sayIssue(reason, names, system) }) : say('compare.why.blocked-plain') }
  }
  const counted = countedBy(columns)
  const doesMeet = columns.map(({ result }) => { const flow_gpm = counted === 'dependable' ? result.dependable?.flow_gpm : result.sustainable_gpm; return typeof flow_gpm === 'number' && result.needed_gpm !== null && flow_gpm >= result.needed_gpm })
  const anyMeets = doesMeet.includes(true)
  const line = (key: FigureKey, of: (column: Column) => Cell, best?: Best, among: readonly boolean[] = columns.map(() => true)): FigureLine => {
    const cells = columns.map((column) => (key === 'needed' ? undefined : blocked(column)) ?? of(column))
    const isBest = bestOf(cells.map(({ value }, index) => (among[index] ? value : undefined)), best)
    const marks = columns.map((column, index): CellMark | undefined => {
      const own = key === 'sustainable' ? needMark('expected', column.result.sustainable_gpm, column.result, system) : key === 'dependable' ? needMark('dependable', column.result.dependable?.flow_gpm ?? null, column.result, system) : undefined
      return own ?? (isBest[index] && best ? { look: 'good', text: say(`compare.${best}`) } : undefined)
    })
    return { key, label: key === 'spare' ? say('compare.row.spare', { by: counted }) : say(`compare.row.${key}`), cells: cells.map(({ text, value }, index) => ({ text, isFigure: value !== undefined, ...(marks[index] && { mark: marks[index] }) })) }
  }
  const known = (value: number | null, show: (value: number) => Cell, missing: string): Cell => (value === null ? { text: missing } : show(value))
  const never = say('compare.why.never')
  const highest = anyMeets ? undefined : 'highest'
  const count = (of: (result: SupplyResult) => number) => ({ result }: Column): Cell => ({ value: of(result), text: String(of(result)) })
  return [
    line('dependable', ({ result, isDoubting }) => (result.dependable ? flowOf(result)(result.dependable.flow_gpm) : { text: say(isDoubting ? 'compare.why.doubting' : 'compare.why.untested') }), highest),
    line('sustainable', ({ result }) => known(result.sustainable_gpm, flowOf(result), never), highest),
    line('needed', ({ result }) => known(result.needed_gpm, (value) => ({ value, text: formatAsked(value, system) }), say('compare.why.no-need'))),
    line('spare', ({ result }) => (result.needed_gpm === null ? { text: say('compare.why.no-need') } : spare((counted === 'dependable' ? result.dependable?.flow_gpm : result.sustainable_gpm) ?? 0, result.needed_gpm, system))),
    line('stored', ({ result }) => known(result.stored_gpm, flowOf(result), never), highest),
    line('hauled', ({ result }) => known(result.hauledCapacity_gpm, flowOf(result), never), highest),
    line('hand', ({ result }) => known(result.hand_gpm, flowOf(result), never), highest),
    line('firstWater', timeCell('firstWater_s'), 'earliest'),
    line('ready', timeCell('supplyReady_s'), 'earliest', anyMeets ? doesMeet : undefined),
    line('gap', timeCell('gap_s'), 'shortest', anyMeets ? doesMeet : undefined),
    line('short', timeCell('short_s'), 'shortest'),
    line('limit', ({ result, names }) => ({ text: result.limitingLink ? linkText(result.limitingLink, names) : say('compare.why.no-limit') })),
    line('tenders', count(({ tenders }) => tenders.filter(({ usable_gal }) => usable_gal !== null).length), anyMeets ? 'fewest' : undefined, doesMeet),
    line('unmeasured', count((result) => countUnmeasured(result).all), 'fewest'),
  ]
}

type FigureKey = 'dependable' | 'sustainable' | 'needed' | 'spare' | 'stored' | 'hauled' | 'hand' | 'firstWater' | 'ready' | 'gap' | 'short' | 'limit' | 'tenders' | 'unmeasured'

/** By which flow plans are told apart: the dependable one, once that of every plan that has an answer is known. */
const countedBy = (columns: readonly Column[]): 'dependable' | 'expected' =>
  columns.some(({ result }) => result.dependable) && columns.every(({ result }) => result.sustainable_gpm === null || result.dependable) ? 'dependable' : 'expected'

function needMark(by: 'dependable' | 'expected', flow_gpm: number | null, { needed_gpm }: SupplyResult, system: UnitSystem): CellMark | undefined {
  if (flow_gpm === null || needed_gpm === null) return undefined
  const short = formatShortBy(flow_gpm, needed_gpm, system)
  return short === undefined ? { look: 'good', text: say('compare.meets') } : { look: 'danger', text: say('compare.short-by', { short, by }) }
}

function spare(flow_gpm: number, needed_gpm: number, system: UnitSystem): Cell {
  const short = formatShortBy(flow_gpm, needed_gpm, system)
  return { value: flow_gpm - needed_gpm, text: short === undefined ? `+${formatSpare(flow_gpm, needed_gpm, system) ?? ''}` : `−${short}` }
}

/** Which values are the best; none where fewer than two are known or all are alike. */
function bestOf(values: readonly (number | undefined)[], best: Best | undefined): boolean[] {
  const known = values.filter((value) => value !== undefined)
  const top = best === 'highest' ? Math.max(...known) : Math.min(...known)
  if (best === undefined || known.length < 2 || known.every((value) => Math.abs(value - top) <= ALIKE)) return values.map(() => false)
  return values.map((value) => value !== undefined && Math.abs(value - top) <= ALIKE)
}
