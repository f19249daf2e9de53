import { FIRE_GROUND, type Bundle } from '../../plan'
import { defaults, wayDistances_ft } from '../../supply'
import type { Progress } from '../progress'
import type { ResolveWays } from '../ways-with-closure'
import { breakEven, type BreakEven } from './break-even'
import { equipmentOf, supplyHose_ft, type Equipment } from './equipment'
import { carriages, tryPlan, type Carriage, type CarriageTrial } from './trial'
import { dumpOf, fillAt, firstPart, layAlong, planOf, type Candidate } from './variant'

export type HoseOrWheels = {
  readonly equipment: Equipment
  /** The best of each kind, greatest flow first; kinds that bring nothing are left out. */
  readonly best: readonly CarriageTrial[]
  /** All that were tried and bring water, greatest flow first. */
  readonly tried: readonly CarriageTrial[]
  /** For the source whose relay or shuttle is best. */
  readonly breakEven?: BreakEven
  readonly triedCount: number
  /** Hose at hand, where it reaches from none of the sources all the way. */
  readonly short?: { readonly hose_ft: number; readonly way_ft: number }
}

/** More pumpers at hand than these are not tried in a lay: every order of unlike ones is. */
const MOST_PUMPERS = 5
/** Shares of the way that are laid with hose where tenders take over. */
const HAND_OVERS = [0.25, 0.5, 0.75] as const

/**
 * Relay, shuttle, or some of both, from the equipment at hand, for each source that may be used.
 *
 * - `relay`: hose from the source to the fire ground, every pumper at hand, the flow the largest.
 * - `shuttle`: the strongest pumper fills, the next drafts at the dump site, all tenders haul.
 * - `handOver`: hose over a quarter, half or three quarters of the way, tenders from there.
 * - `both`: the shuttle first, and a relay from a source to the fire ground by the pumpers left.
 *
 * @param given      district and plan; its fire ground, demand and dump site are taken
 * @param candidates sources, the way from each to the fire ground
 * @param resolve    finds the ways of changed plans
 * @param leftOut    apparatus that stays at home
 * @returns a generator: its yields are progress, its result the comparison
 */
export function* hoseOrWheels(given: Bundle, candidates: readonly Candidate[], resolve: ResolveWays, leftOut: ReadonlySet<string> = new Set()): Generator<Progress, HoseOrWheels> {
  const equipment = equipmentOf(given, leftOut)
  const tasks = tasksOf(given, candidates, equipment)
  const tried: CarriageTrial[] = []
  // The plot takes about as long as a dozen trials.
  const whole = tasks.length + 12
  for (const [index, task] of tasks.entries()) {
    const trial = task(resolve)
    if (trial) tried.push(trial)
    yield { doneShare: (index + 1) / whole }
  }
  tried.sort(isBefore)
  const best = carriages.flatMap((carriage) => tried.find((trial) => trial.carriage === carriage) ?? []).sort(isBefore)
  const first = best.find(({ carriage }) => carriage === 'relay' || carriage === 'shuttle')
  const candidate = candidates.find(({ fromId }) => fromId === first?.fromId) ?? candidates[0]
  const curve = candidate && breakEven(given, candidate, equipment, resolve)
  let drawn: BreakEven | undefined
  for (; curve;) {
    const step = curve.next()
    if (step.done) { drawn = step.value; break }
    yield { doneShare: (tasks.length + 12 * step.value.doneShare) / whole }
  }
  const hose_ft = supplyHose_ft(equipment.hose)
  const way_ft = Math.min(...candidates.map(({ way }) => (wayDistances_ft(way).at(-1) ?? 0) * defaults.layFactor.value))
  return { equipment, best, tried, ...(drawn && { breakEven: drawn }), triedCount: tasks.length, ...(way_ft > hose_ft && Number.isFinite(way_ft) && { short: { hose_ft, way_ft } }) }
}

/** More water first; as much, the one that is ready sooner. */
const isBefore = (a: CarriageTrial, b: CarriageTrial): number => b.flow_gpm - a.flow_gpm || a.ready_s - b.ready_s

type Task = (resolve: ResolveWays) => CarriageTrial | undefined

function tasksOf(given: Bundle, candidates: readonly Candidate[], equipment: Equipment): Task[] {
  const pumperIds = equipment.pumpers.map(({ id }) => id as string).slice(0, MOST_PUMPERS)
  const tenderIds = equipment.tenders.map(({ id }) => id as string)
  const tasks: Task[] = []
  const add = (carriage: Carriage, told: Partial<CarriageTrial> & { fromId: string }, parts: Parameters<typeof planOf>[1]) => {
    tasks.push((resolve) => tryPlan(given, planOf(given.plan, parts), { carriage, ...told }, resolve))
  }
  for (const candidate of candidates) {
    const { fromId } = candidate
    const across = ({ isAcross }: Candidate) => (isAcross ? { isAcross } : {})
    for (const sourceId of pumperIds) {
      const lay = layAlong(equipment, candidate, candidate.way, FIRE_GROUND, [sourceId, ...pumperIds.filter((id) => id !== sourceId)])
      if (lay) add('relay', { fromId, ...across(candidate) }, { lay, tenderIds: [] })
    }
    const { fillPumper, dumpPumper, spare } = shuttlePumpers(given, pumperIds)
    const dump = dumpOf(given, dumpPumper)
    if (!dump || tenderIds.length === 0) continue
    if (fillPumper !== undefined) {
      const fill = fillAt(given, candidate, tenderIds.length, fillPumper)
      add('shuttle', { fromId }, { fill, dump, tenderIds })
      for (const other of candidates) {
        const lay = layAlong(equipment, other, other.way, FIRE_GROUND, spare)
        if (lay) add('both', { fromId, ...(other.fromId !== fromId && { otherFromId: other.fromId }), ...across(other) }, { fill, dump, lay, tenderIds })
      }
    }
    const road = candidate.isAcross ? candidate.road : candidate.way
    for (const hoseShare of road ? HAND_OVERS : []) {
      const part = firstPart(road ?? [], hoseShare)
      const point = part.at(-1)
      const free = fillPumper === undefined ? spare : [fillPumper, ...spare]
      if (!point) continue
      const fill = fillAt(given, { ...candidate, point }, tenderIds.length)
      const lay = layAlong(equipment, candidate, part, fill.id, free)
      if (lay) add('handOver', { fromId, hoseShare }, { fill, dump, lay, tenderIds })
    }
  }
  return tasks
}

/** The dump site's own pumper where it has one; then the strongest at the source and the next at the dump site. */
function shuttlePumpers({ plan }: Bundle, pumperIds: readonly string[]): { readonly fillPumper?: string | undefined; readonly dumpPumper?: string | undefined; readonly spare: readonly string[] } {
  const own = plan.dumpSites[0]?.pumperId
  const [fillPumper, ...rest] = pumperIds.filter((id) => id !== own)
  if (own !== undefined || plan.dumpSites[0]) return { fillPumper, dumpPumper: own, spare: rest }
  const [dumpPumper, ...spare] = rest
  return { fillPumper, dumpPumper, spare }
}
