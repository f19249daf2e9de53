import type { Bundle } from '../../plan'
import { compileShuttle, hauledCapacity, roundOf, runShuttle, sustainableFlow, type ShuttleSpec } from '../../shuttle'
import { compilePlan, pumpCapacity_gpm, type CompiledPlan } from '../../supply'
import { SECONDS_PER_MINUTE } from '../../units'
import type { ResolveWays } from '../ways-with-closure'
import { waysOfTender } from '../stops/tender-ways'
import { requestTasks, type RequestAsk } from './request-ask'

/** A set of tenders as bits: bit i is the i-th of `SetDesk.ids`. */
export type TenderSet = number

/** What a set of tenders gives. `met_s`: when supply is ready at the asked flow, if the set sustains it. */
export type SetAnswer = { readonly flow_gpm: number; readonly met_s: number | undefined }

/** The flows differ by no more than the search can tell. */
const SAME_FLOW_GPM = 0.5

/** At most this many tenders: sets are kept in the bits of one whole number. */
export const MOST_TENDERS = 30

/**
 * Answers for sets of tenders under one plan: its sites and pumpers as they are, other tenders. Each set is compiled and
 * simulated like a plan of its own, once.
 */
export class SetDesk {
  readonly ids: readonly string[]
  readonly ask: RequestAsk
  readonly #bundle: Bundle
  readonly #tasks: ReturnType<typeof requestTasks>
  readonly #bounds_gpm: readonly number[]
  readonly #compiled = new Map<TenderSet, CompiledPlan>()
  readonly #answers = new Map<TenderSet, SetAnswer>()
  readonly #hauls_gpm = new Map<TenderSet, number>()

  /** @param resolve finds the ways of tenders the plan does not send yet */
  constructor(bundle: Bundle, ask: RequestAsk, resolve: ResolveWays) {
    const tasks = requestTasks(bundle)
    if (tasks.length > MOST_TENDERS) throw new RangeError(`tenders are ${tasks.length}, must be at most ${MOST_TENDERS}`)
    const whole = resolve({ ...bundle, plan: { ...bundle.plan, tenders: tasks.map(({ task }) => task) } })
    this.ask = ask
    this.#bundle = whole
    this.#tasks = tasks
    this.ids = tasks.map(({ tender }) => tender.id)
    this.#bounds_gpm = this.ids.map((_, index) => soloBound_gpm(this.compiled(1 << index).spec))
  }

  get tasks(): ReturnType<typeof requestTasks> { return this.#tasks }
  get simulatedCount(): number { return this.#answers.size }

  /** The plan with exactly these tenders, worked out as far as numbers. */
  compiled(set: TenderSet): CompiledPlan {
    const known = this.#compiled.get(set)
    if (known) return known
    const made = compilePlan({ ...this.#bundle, plan: { ...this.#bundle.plan, tenders: this.#tasks.flatMap(({ task }, index) => (set & (1 << index) ? [task] : [])) } })
    this.#compiled.set(set, made)
    return made
  }

  /**
   * No set sustains more than this: each tender's load over its shortest round with nobody in the way, added up, and no
   * more than the pumpers send on. Queues, full tanks and weaker inlets beside it only make rounds longer.
   */
  bound_gpm(set: TenderSet): number {
    return Math.min(this.pumps_gpm, this.#bounds_gpm.reduce((sum, bound_gpm, index) => (set & (1 << index) ? sum + bound_gpm : sum), 0))
  }

  boundOf_gpm = (index: number): number => this.#bounds_gpm[index] ?? 0

  /** What the pumpers at the dump sites send on does not depend on who hauls. */
  get pumps_gpm(): number { return pumpCapacity_gpm(this.compiled(this.whole)) || Infinity }

  get whole(): TenderSet { return 2 ** this.ids.length - 1 }

  /** What a set hauls when nothing at the dump blocks; it never sustains more. One run, where the flow takes many. */
  hauled_gpm(set: TenderSet): number {
    const known_gpm = this.#hauls_gpm.get(set)
    if (known_gpm !== undefined) return known_gpm
    const { spec } = this.compiled(set)
    const hauled_gpm = spec ? hauledCapacity(compileShuttle(spec)).hauledCapacity_gpm : 0
    this.#hauls_gpm.set(set, hauled_gpm)
    return hauled_gpm
  }

  answer(set: TenderSet): SetAnswer {
    const known = this.#answers.get(set)
    if (known) return known
    const made = this.#simulate(this.compiled(set))
    this.#answers.set(set, made)
    return made
  }

  #simulate(compiled: CompiledPlan): SetAnswer {
    const { spec } = compiled
    if (!spec) return { flow_gpm: 0, met_s: undefined }
    const scenario = compileShuttle(spec)
    const flow_gpm = Math.min(sustainableFlow(scenario).flow_gpm, pumpCapacity_gpm(compiled))
    if (flow_gpm < this.ask.flow_gpm - SAME_FLOW_GPM) return { flow_gpm, met_s: undefined }
    return { flow_gpm, met_s: runShuttle(scenario, { demand: this.ask.flow_gpm }).supplyReady_s }
  }

  /** The set sustains the asked flow from the asked time on, or earlier. */
  isMet(set: TenderSet): boolean {
    const { met_s } = this.answer(set)
    return met_s !== undefined && met_s <= this.ask.by_s
  }

  /** A set that cannot meet the flow, told without simulating its flow. */
  cannotMeet(set: TenderSet): boolean {
    return this.bound_gpm(set) < this.ask.flow_gpm - SAME_FLOW_GPM || this.hauled_gpm(set) < this.ask.flow_gpm - SAME_FLOW_GPM
  }
}

/** One tender's load over its shortest round: at the best rate of its bay and on its shortest way, with no queue. */
function soloBound_gpm(spec: ShuttleSpec | undefined): number {
  const [tender] = spec?.tenders ?? []
  if (!tender || !spec) return 0
  const rounds_s = waysOfTender(tender).map((way) => roundOf({ ...tender, ...way }, Math.max(...(spec.fills[way.fillIndex]?.bayRate_gpm ?? [0]))).cycle_s)
  return (tender.usable_gal * SECONDS_PER_MINUTE) / Math.min(...rounds_s)
}
