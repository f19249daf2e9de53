import { issue, requirePositive, requireThat, type Issue } from '../issue'
import { elevation_psi } from './elevation-pressure'
import { flowForSpare_gpm, layFriction_psiPerGpm2, layLoss_psi, type HoseLay } from './hose-lay'
import { orificeFlow_gpm } from './openings'

/** Maximum pressure at a tender's inlet unless its maker says otherwise: plastic tanks. Trade articles (seen). */
export const DEFAULT_MAX_INLET_PSI = 100
/** Most a tender takes unless known: plastic tanks' venting. Trade articles (seen). */
export const DEFAULT_FILL_LIMIT_GPM = 1000
/** Inlet piping with its valve and elbow, as an opening; assumed. */
const INLET_DISCHARGE_FACTOR = 0.6

/** C of an inlet nobody has measured, [gpm per √psi]: an opening of its size with Cd 0.6; assumed. */
export const assumedInletCoefficient = (size_in: number): number => orificeFlow_gpm(size_in, 1, INLET_DISCHARGE_FACTOR)

/** One bay: its hose from the manifold (or the pump), and the tender at its end. */
export type FillBay = {
  readonly lay: HoseLay
  /** Q = C · √Δp of the tender's inlet, the tank being at atmospheric pressure, [gpm per √psi]. */
  readonly inletCoefficient: number
  /** Default 100 psi. */
  readonly maxInlet_psi?: number
  /** What the tank's vent lets in; default 1,000 gpm. */
  readonly fillLimit_gpm?: number
}

export type FillLine = {
  /** Most flow that pump or source gives at a discharge pressure; never rising with it. */
  readonly supplyFlow_gpm: (discharge_psi: number) => number
  /** Lowest of hose working pressures, pump and relief settings. */
  readonly maxDischarge_psi: number
  /** Hose from the pump to the manifold, carrying the whole flow; absent when every bay has its own line from the pump. */
  readonly trunk?: HoseLay
  /** In the order they are put to use. */
  readonly bays: readonly FillBay[]
}

/** `tender`: every tender takes all its vent allows. `inlet-pressure`: its inlet allows no more pressure. `supply`: pump or source. `discharge-pressure`: the hose, at the highest allowed pressure. */
export type FillLimit = 'tender' | 'inlet-pressure' | 'supply' | 'discharge-pressure'

/** The answer for one number of bays busy. */
export type FillCase = {
  readonly busyCount: number
  /** Into each busy bay's tender. */
  readonly rates_gpm: readonly number[]
  readonly total_gpm: number
  /** Lowest discharge pressure that gives it. */
  readonly pumpPressure_psi: number
  /** At each busy bay's tender inlet. */
  readonly inletPressures_psi: readonly number[]
  /** At each busy bay's inlet, valves and pump left as they are, once the other bays have closed: what a tender gets when its neighbour shuts. */
  readonly alonePressures_psi: readonly number[]
  readonly limitedBy: FillLimit
}

export type FillRates = {
  /** Mean rate into each tender, by how many bays are busy: index 0 is one bay. */
  readonly bayRate_gpm: readonly number[]
  readonly cases: readonly FillCase[]
  readonly issues: readonly Issue[]
}

/**
 * Rates into the tenders of a fill site, for each number of bays busy on one pump.
 *
 *   pump → trunk → bay hose → inlet C·√p → tank at atmospheric pressure
 *   pump pressure = trunk(ΣQ) + bay(Qᵢ) + (Qᵢ/C)²
 *
 * The pump is run at the lowest pressure that gives the most. A bay is gated where its tender's vent or its inlet's
 * pressure would be passed. Of the discharge pressures up to the limit, the highest that the supply can keep up is found
 * by bisection: what the bays take rises with pressure, what the supply gives does not.
 *
 * @param line supply, trunk and bays; at least one bay
 * @returns rates by bays busy, pressures, and what limits each case; issues `no-fill-flow` (block) when nothing reaches
 *   a tender, `bay-pressure-when-alone` (warn) when a bay left alone would go over its inlet's limit
 * @throws RangeError if a number is out of range
 * @source own; hose, appliance and inlet laws as in their files; inlet limit 100 psi and 1,000 gpm, trade articles (seen)
 */
export function fillRates(line: FillLine): FillRates {
  const { bays, maxDischarge_psi } = line
  requireThat(bays.length > 0, 'bays', '[]', 'at least one')
  requirePositive('maxDischarge_psi', maxDischarge_psi)
  const issues: Issue[] = []
  const cases = bays.map((_, index) => solveCase(line, bays.slice(0, index + 1)))
  for (const { busyCount, total_gpm, alonePressures_psi } of cases) {
    if (total_gpm <= 0) issues.push(issue('no-fill-flow', 'block', [], { busyCount, maxDischarge_psi }))
    alonePressures_psi.forEach((alone_psi, index) => {
      const max_psi = bays[index]?.maxInlet_psi ?? DEFAULT_MAX_INLET_PSI
      if (busyCount > 1 && alone_psi > max_psi + 0.5) issues.push(issue('bay-pressure-when-alone', 'warn', [], { busyCount, bay: index + 1, alone_psi, max_psi }))
    })
  }
  return { bayRate_gpm: cases.map(({ total_gpm, busyCount }) => total_gpm / busyCount), cases, issues }
}

const ROUNDS = 60

function solveCase(line: FillLine, busy: readonly FillBay[]): FillCase {
  const { supplyFlow_gpm, maxDischarge_psi } = line
  const caps = busy.map(capOf)
  const atMost = flowsAt(line, busy, maxDischarge_psi)
  let pump_psi = maxDischarge_psi
  const tooMuch = (pressure: number) => sum(flowsAt(line, busy, pressure)) > supplyFlow_gpm(pressure)
  const supplyLimits = tooMuch(maxDischarge_psi)
  if (supplyLimits) pump_psi = bisect(0, maxDischarge_psi, (pressure) => !tooMuch(pressure))
  let flows = supplyLimits ? flowsAt(line, busy, pump_psi) : atMost
  const total = sum(flows)
  // All gated: the same flows come at a lower pressure.
  const capped = flows.every((flow, i) => flow >= (caps[i]?.flow_gpm ?? 0) * (1 - 1e-9))
  if (capped) {
    pump_psi = bisect(pump_psi, 0, (pressure) => sum(flowsAt(line, busy, pressure)) >= total * (1 - 1e-9))
    flows = caps.map(({ flow_gpm }) => flow_gpm)
  }
  const limitedBy: FillLimit = capped ? (caps.every(({ by }) => by === 'inlet-pressure') ? 'inlet-pressure' : 'tender') : supplyLimits ? 'supply' : 'discharge-pressure'
  return {
    busyCount: busy.length, rates_gpm: flows, total_gpm: sum(flows), pumpPressure_psi: pump_psi, limitedBy,
    inletPressures_psi: busy.map((bay, i) => ((flows[i] ?? 0) / bay.inletCoefficient) ** 2),
    alonePressures_psi: busy.map((bay, i) => alonePressure_psi(line, bay, pump_psi, flows[i] ?? 0, sum(flows))),
  }
}

/** The most a bay is let have: its vent's flow, or the flow at which its inlet's pressure is reached. */
function capOf({ inletCoefficient, maxInlet_psi = DEFAULT_MAX_INLET_PSI, fillLimit_gpm = DEFAULT_FILL_LIMIT_GPM }: FillBay): { flow_gpm: number; by: 'tender' | 'inlet-pressure' } {
  requirePositive('inletCoefficient', inletCoefficient)
  requirePositive('maxInlet_psi', maxInlet_psi)
  requirePositive('fillLimit_gpm', fillLimit_gpm)
  const byPressure = inletCoefficient * Math.sqrt(maxInlet_psi)
  return fillLimit_gpm <= byPressure ? { flow_gpm: fillLimit_gpm, by: 'tender' } : { flow_gpm: byPressure, by: 'inlet-pressure' }
}

/** Flows into the busy bays at a pump pressure, supply permitting: bisection on the pressure at the manifold. */
function flowsAt({ trunk }: FillLine, busy: readonly FillBay[], pump_psi: number): number[] {
  const flows = (manifold_psi: number) => busy.map((bay) => Math.min(bayFlow_gpm(bay, manifold_psi), capOf(bay).flow_gpm))
  if (!trunk) return flows(pump_psi)
  const manifold_psi = bisect(0, Math.max(0, pump_psi - Math.min(0, elevation_psi(trunk.rise_ft ?? 0))), (pressure) => pressure + layLoss_psi(trunk, sum(flows(pressure))) <= pump_psi)
  return flows(manifold_psi)
}

/** Flow through a bay's hose and inlet, by the pressure at its start. */
function bayFlow_gpm({ lay, inletCoefficient }: FillBay, start_psi: number): number {
  return flowForSpare_gpm(layFriction_psiPerGpm2(lay) + 1 / inletCoefficient ** 2, lay.fittingCount ?? 0, start_psi - elevation_psi(lay.rise_ft ?? 0))
}

/** Pressure at a bay's inlet when only it still flows: the valve that gates it stays where it is, the pump at its pressure. */
function alonePressure_psi(line: FillLine, bay: FillBay, pump_psi: number, flow_gpm: number, total_gpm: number): number {
  if (flow_gpm <= 0) return 0
  const manifold_psi = pump_psi - (line.trunk ? layLoss_psi(line.trunk, total_gpm) : 0)
  // Everything from the manifold on, gate included, as one resistance.
  const resistance = Math.max(1e-12, (manifold_psi - elevation_psi(bay.lay.rise_ft ?? 0)) / flow_gpm ** 2)
  const trunkResistance = line.trunk ? layFriction_psiPerGpm2(line.trunk) : 0
  const spare_psi = pump_psi - elevation_psi(bay.lay.rise_ft ?? 0) - elevation_psi(line.trunk?.rise_ft ?? 0)
  const alone_gpm = Math.sqrt(Math.max(0, spare_psi) / (resistance + trunkResistance))
  return (Math.max(alone_gpm, flow_gpm) / bay.inletCoefficient) ** 2
}

const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0)

/** Farthest point from `good` towards `far` where the test still holds, taking it to hold at `good`. */
function bisect(good: number, far: number, holds: (value: number) => boolean): number {
  if (holds(far)) return far
  let inside = good, outside = far
  for (let i = 0; i < ROUNDS; i++) {
    const middle = (inside + outside) / 2
    if (holds(middle)) inside = middle
    else outside = middle
  }
  return inside
}
