import type { Arrangement, CompiledRelay, Placed } from './arrangement'
import { largestFlow_gpm } from './arrangement'
import { placeOnLay, stretchAt } from './lay-line'
import { pressuresBetween } from './reach'

/** The search for places lets each step err by less; no gauge shows it. */
const SLACK_PSI = 1e-5

/** Head behind a pumper at its place, and of the water that comes to it; in an open relay nothing comes under pressure. */
export type WorkingPoint = Placed & { readonly head_psi: number; readonly intakeHead_psi?: number }

type Leg = { readonly from_ft: number; readonly to_ft: number; readonly isLast: boolean }

const legsOf = ({ line }: CompiledRelay, placed: readonly Placed[]): Leg[] =>
  placed.map(({ at_ft }, i) => ({ from_ft: at_ft, to_ft: placed[i + 1]?.at_ft ?? line.length_ft, isLast: i === placed.length - 1 }))

/** Head that a leg needs at its near end for all that is asked of its pressures. */
function legNeed_psi({ line, wanted, spec }: CompiledRelay, flow_gpm: number, { from_ft, to_ft, isLast }: Leg): number {
  const atNoHead = pressuresBetween(line, flow_gpm, 0, from_ft, to_ft)
  const end_psi = isLast ? wanted.outlet_psi : spec.mode === 'open' ? wanted.tankInlet_psi : wanted.residual_psi
  return Math.max(Math.min(wanted.leastHose_psi, end_psi) - atNoHead.least_psi, end_psi - atNoHead.end_psi)
}

/** Highest head behind a pumper that keeps the hose within its working pressure with the water standing: all of it downstream, or in an open relay the leg's. */
function headLimit_psi({ line, spec }: CompiledRelay, flow_gpm: number, { from_ft, to_ft }: Leg): number {
  const here = placeOnLay(line, from_ft, flow_gpm)
  if (spec.mode === 'closed') return here.ceiling_psi + here.loss_psi
  let held_psi = here.working_psi + Math.min(here.z_psi, placeOnLay(line, to_ft, 0).z_psi)
  for (let i = stretchAt(line, from_ft); i < line.x_ft.length && (line.x_ft[i] ?? 0) < to_ft; i++) {
    const z_psi = (line.x_ft[i] ?? 0) > from_ft ? line.z_psi[i] ?? 0 : here.z_psi
    const next_psi = (line.x_ft[i + 1] ?? to_ft) < to_ft ? line.z_psi[i + 1] ?? 0 : placeOnLay(line, to_ft, 0).z_psi
    held_psi = Math.min(held_psi, (line.working_psi[i] ?? 0) + Math.min(z_psi, next_psi))
  }
  return held_psi + here.loss_psi
}

/**
 * How pumpers at given places work at a flow: no harder than it takes.
 *
 *   needed behind j = the most of: what the leg needs; what is needed behind j + 1, less what j + 1 adds
 *
 * @param relay    from compileRelay
 * @param placed   source first, by rising distance
 * @param flow_gpm above 0
 * @param effortShare of each pumper's pressure at that flow that may be used, 0 to 1
 * @returns one point for each; undefined when they cannot carry the flow
 */
export function findWorkingPoints(relay: CompiledRelay, placed: readonly Placed[], flow_gpm: number, effortShare = 1): WorkingPoint[] | undefined {
  const { line, spec, source, limits } = relay
  const legs = legsOf(relay, placed)
  const sourceMost_psi = source.discharge_psi(flow_gpm)
  if (sourceMost_psi === undefined) return undefined
  const add_psi = placed.map(({ id }, i) => (i === 0 ? sourceMost_psi : limits.get(id)?.(flow_gpm)))
  const needs_psi = legs.map((leg) => legNeed_psi(relay, flow_gpm, leg))
  if (spec.mode === 'closed') {
    for (let i = needs_psi.length - 2; i >= 0; i--) needs_psi[i] = Math.max(needs_psi[i] ?? 0, (needs_psi[i + 1] ?? 0) - effortShare * (add_psi[i + 1] ?? 0))
  }
  const points: WorkingPoint[] = []
  for (const [i, one] of placed.entries()) {
    const leg = legs[i], most_psi = add_psi[i]
    if (!leg || most_psi === undefined) return undefined
    const here = placeOnLay(line, one.at_ft, flow_gpm)
    const intakeHead_psi = spec.mode === 'closed' ? points[i - 1]?.head_psi : undefined
    const own_psi = intakeHead_psi === undefined ? effortShare * most_psi + here.z_psi + here.loss_psi : effortShare * most_psi + intakeHead_psi
    const run_psi = (spec.pumpers.find(({ id }) => id === one.id)?.mostDischarge_psi ?? Infinity) + here.z_psi + here.loss_psi
    const head_psi = Math.max(needs_psi[i] ?? 0, intakeHead_psi ?? -Infinity)
    if (head_psi > Math.min(own_psi, Math.max(run_psi, intakeHead_psi ?? -Infinity), headLimit_psi(relay, flow_gpm, leg)) + SLACK_PSI) return undefined
    points.push({ ...one, head_psi, intakeHead_psi })
  }
  return points
}

/** Working points at which the hardest-driven pumper uses the least share of its pressure. */
export function findEasedPoints(relay: CompiledRelay, placed: readonly Placed[], flow_gpm: number): WorkingPoint[] | undefined {
  let points = findWorkingPoints(relay, placed, flow_gpm)
  if (!points) return undefined
  let low = 0, high = 1
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2
    const eased = findWorkingPoints(relay, placed, flow_gpm, middle)
    if (eased) {
      high = middle
      points = eased
    } else low = middle
  }
  return points
}

/**
 * The most that pumpers at given places carry.
 *
 * @param placed source first, by rising distance; every id one of the relay's
 */
export function arrangementAt(relay: CompiledRelay, placed: readonly Placed[], most_gpm = relay.source.mostFlow_gpm): Arrangement {
  return { placed, flow_gpm: largestFlow_gpm((flow_gpm) => findWorkingPoints(relay, placed, flow_gpm) !== undefined, Math.min(most_gpm, relay.source.mostFlow_gpm)) }
}

/** Head limit of each leg, as pressure behind its pumper. [psi] */
export const dischargeLimit_psi = (relay: CompiledRelay, placed: readonly Placed[], index: number, flow_gpm: number): number => {
  const leg = legsOf(relay, placed)[index]
  if (!leg) return 0
  const here = placeOnLay(relay.line, leg.from_ft, flow_gpm)
  return headLimit_psi(relay, flow_gpm, leg) - here.z_psi - here.loss_psi
}
