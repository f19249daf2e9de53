import { defaultWorkingPressure_psi, hoseCoefficient } from '../hydraulics'
import { issue, requirePositive, type Issue } from '../issue'
import type { HoseLine, LaySegment } from './spec'

/** Hose of one kind at hand, all of it together. */
export type HoseStock = HoseLine & { readonly id: string; readonly length_ft: number; readonly section_ft?: number }

/** Sections that stay in each bed. Lesson plan *Relay Pumping Operations* (seen-2nd). */
const SPARE_SECTION_COUNT = 2
/** Usual section; LDH also comes in 50 and 25 ft. */
const USUAL_SECTION_FT = 100
const MOST_LINES = 4
/** Shorter runs of more lines are not worth the fittings at their ends. Assumed. */
const LEAST_RUN_FT = 300

export type StockLay = {
  /** Empty when the hose does not reach. */
  readonly lay: readonly LaySegment[]
  /** Of each stock used, [ft]. */
  readonly used: readonly { readonly id: string; readonly length_ft: number }[]
  readonly issues: readonly Issue[]
}

type Slot = { readonly lines: HoseStock[]; conductance: number }

/**
 * A lay of a length out of the hose at hand, with as little friction as it can have.
 *
 *   each section, the widest hose first, goes beside the stretch that so far passes least
 *
 * Friction of a stretch is 1 / (Σ 1/√C)²: it falls ever more slowly the more hose lies there, so hose goes where there is
 * least. Stretches alike lie together, the widest first, from the source on, with a fitting wherever the
 * number of lines changes.
 *
 * @param stock     hose by kind
 * @param length_ft to be reached, above 0
 * @param spareSectionCount sections of each kind left in the bed; default 2
 * @returns the lay; issue `relay-hose-short` (block) with what is missing
 * @throws RangeError if the length is not positive
 * @source own; spare sections: lesson plan (seen-2nd)
 */
export function layFromStock(stock: readonly HoseStock[], length_ft: number, spareSectionCount = SPARE_SECTION_COUNT): StockLay {
  requirePositive('length_ft', length_ft)
  const section_ft = Math.min(USUAL_SECTION_FT, ...stock.map((one) => one.section_ft ?? USUAL_SECTION_FT))
  const slots: Slot[] = Array.from({ length: Math.ceil(length_ft / section_ft - 1e-9) }, () => ({ lines: [], conductance: 0 }))
  const passes = ({ size_in, coefficient }: HoseLine) => 1 / Math.sqrt(coefficient ?? hoseCoefficient(size_in).coefficient)
  const widestFirst = [...stock].sort((a, b) => passes(b) - passes(a))
  let available_ft = 0
  for (const one of widestFirst) {
    const own_ft = one.section_ft ?? USUAL_SECTION_FT
    const usable_ft = Math.max(0, one.length_ft - spareSectionCount * own_ft)
    available_ft += usable_ft
    let left = Math.floor(usable_ft / section_ft + 1e-9)
    for (; left > 0; left--) {
      const slot = slots.reduce((least, other) => (other.conductance < least.conductance - 1e-12 ? other : least), slots[0]!)
      if (slot.lines.length >= MOST_LINES) break
      slot.lines.push(one)
      slot.conductance += passes(one)
    }
  }
  if (slots.some(({ lines }) => lines.length === 0)) {
    return { lay: [], used: [], issues: [issue('relay-hose-short', 'block', stock.map(({ id }) => id), { short_ft: length_ft - Math.min(available_ft, length_ft), spareSectionCount })] }
  }
  const ordered = [...slots].sort((a, b) => b.conductance - a.conductance || workingOf(b) - workingOf(a))
  const runs: Run[] = []
  for (const { lines } of ordered) {
    const last = runs[runs.length - 1]
    if (last && keyOf(last.lines) === keyOf(lines)) last.length_ft += section_ft
    else runs.push({ length_ft: section_ft, lines })
  }
  const kept = withoutStubs(runs)
  const used = new Map<string, number>()
  for (const { length_ft: run_ft, lines } of kept) for (const { id } of lines) used.set(id, (used.get(id) ?? 0) + run_ft)
  const lay = kept.map(({ length_ft: run_ft, lines }, i): LaySegment => {
    const before = kept[i - 1]
    const isParting = before !== undefined && before.lines.length !== lines.length
    return {
      length_ft: run_ft, lines: lines.map(({ size_in, coefficient, working_psi }) => ({ size_in, coefficient, working_psi })),
      ...(isParting && { appliances: [{ at_ft: 0, kind: 'fitting' as const }] }),
    }
  })
  return { lay, used: [...used].map(([id, used_ft]) => ({ id, length_ft: used_ft })), issues: [] }
}

type Run = { length_ft: number; lines: readonly HoseStock[] }

const keyOf = (lines: readonly HoseStock[]): string => lines.map(({ id }) => id).join()

/** A short run with lines more than the run beside it loses them: two fittings cost more than it gains. */
function withoutStubs(runs: readonly Run[]): Run[] {
  const kept: Run[] = []
  runs.forEach((run, i) => {
    const beside = [kept[kept.length - 1], runs[i + 1]].find((other) => other && other.lines.length < run.lines.length && other.lines.every(({ id }, k) => run.lines[k]?.id === id))
    const lines = run.length_ft < LEAST_RUN_FT && beside ? beside.lines : run.lines
    const last = kept[kept.length - 1]
    if (last && keyOf(last.lines) === keyOf(lines)) last.length_ft += run.length_ft
    else kept.push({ length_ft: run.length_ft, lines })
  })
  return kept
}

const workingOf = ({ lines }: Slot): number => Math.min(...lines.map(({ size_in, working_psi }) => working_psi ?? defaultWorkingPressure_psi(size_in)))
