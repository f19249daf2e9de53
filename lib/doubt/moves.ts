import type { ShuttleSpec } from '../shuttle'
import { compilePlan, pumpCapacity_gpm, type CompiledPlan } from '../supply'
import type { DoubtInput } from './input'
import { inShapeOf, isMoment, numbersOf, type SpecNumbers } from './spec-numbers'

/** What one input does to the numbers of the plan at each of its knots: their ratio to the planned value, of moments what is added to it. */
export type Moves = {
  /** Rising factors of the input, 1 among them. Beyond the first and last the plan has no answer. */
  readonly knots: readonly number[]
  /** By number it moves, one a knot: its ratio (1 at the factor 1) or, for a moment, the seconds added (0 there). */
  readonly changes: ReadonlyMap<string, readonly number[]>
}

/** Sum of what the pumpers at the dump sites can send on: it caps the flow and is no part of the spec. */
export const PUMP = 'pump_gpm'

/** Halvings of the range where its end has no answer. */
const EDGE_STEPS = 6

/**
 * Compiles the plan over one input's range, all others as planned. Hydraulics runs here, a few
 * times an input, and never in a night.
 *
 * Ends and, where the ends say that the effect is no straight line, the middles between; an end
 * at which the plan has no answer (a lift no pump reaches) is moved in to the last factor that has one.
 */
export function movesOf(compiled: CompiledPlan, input: DoubtInput): Moves {
  const base = planNumbers(compiled)
  if (!compiled.spec || !base) return { knots: [1], changes: new Map() }
  const { spec } = compiled
  const at = (factor: number): SpecNumbers | undefined => {
    const factors = new Map(input.numberKeys.map((key) => [key, factor]))
    return planNumbers(compilePlan(compiled.bundle, { factors }), spec)
  }
  const low = edge(at, 1 - input.spreadShare)
  const high = edge(at, 1 + input.spreadShare)
  const ends = [low, { factor: 1, numbers: base }, high]
  const isEven = Math.abs(high.factor - 1 - (1 - low.factor)) < 1e-12 && isStraight(base, low.numbers, high.numbers)
  const all = isEven ? ends : [low, middle(at, low.factor), { factor: 1, numbers: base }, middle(at, high.factor), high]
  const found = all.filter((knot): knot is { factor: number; numbers: SpecNumbers } => knot.numbers !== undefined)
  const knots = found.filter(({ factor }, index) => index === 0 || factor > (found[index - 1]?.factor ?? 0))
  const changes = new Map<string, readonly number[]>()
  for (const [path, planned] of base) {
    const values = knots.map(({ numbers }) => numbers.get(path) ?? planned)
    if (values.every((value) => Math.abs(value - planned) <= 1e-12 * Math.abs(planned))) continue
    if (isMoment(path)) changes.set(path, values.map((value) => value - planned))
    else if (planned !== 0) changes.set(path, values.map((value) => value / planned))
  }
  return { knots: knots.map(({ factor }) => factor), changes }
}

type At = (factor: number) => SpecNumbers | undefined

function edge(at: At, wanted: number): { factor: number; numbers: SpecNumbers | undefined } {
  const whole = at(wanted)
  if (whole) return { factor: wanted, numbers: whole }
  let inside = { factor: 1, numbers: undefined as SpecNumbers | undefined }
  let outside = wanted
  for (let step = 0; step < EDGE_STEPS; step++) {
    const factor = (inside.factor + outside) / 2
    const numbers = at(factor)
    if (numbers) inside = { factor, numbers }
    else outside = factor
  }
  return inside
}

const middle = (at: At, end: number): { factor: number; numbers: SpecNumbers | undefined } => {
  const factor = (1 + end) / 2
  return { factor, numbers: end === 1 ? undefined : at(factor) }
}

/** The numbers lie on one straight line through both ends and the plan. */
function isStraight(base: SpecNumbers, low: SpecNumbers | undefined, high: SpecNumbers | undefined): boolean {
  if (!low || !high) return false
  for (const [path, planned] of base) {
    const sum = (low.get(path) ?? planned) + (high.get(path) ?? planned)
    if (Math.abs(sum - 2 * planned) > 1e-9 * Math.abs(planned)) return false
  }
  return true
}

/** All that a night needs of a compiled plan, as numbers by path. */
export function planNumbers(compiled: CompiledPlan, shape?: ShuttleSpec): SpecNumbers | undefined {
  const { spec } = compiled
  if (!spec) return undefined
  if (shape && (shape.tenders.length !== spec.tenders.length || shape.fills.length !== spec.fills.length || shape.dumps.length !== spec.dumps.length)) return undefined
  const numbers = new Map(numbersOf(shape ? inShapeOf(shape, spec) : spec))
  numbers.set(PUMP, pumpCapacity_gpm(compiled))
  return numbers
}
