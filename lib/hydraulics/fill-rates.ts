import { issue, requirePositive, requireThat, type Issue } from '../issue'
import { applianceLoss_psi } from './appliance-loss'
import { elevation_psi } from './elevation-pressure'
import { flowForSpare_gpm, layFriction_psiPerGpm2, type HoseLay } from './hose-lay'
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

/**
 * `tender`: every tender takes all its vent allows. `inlet-pressure`: its inlet allows no more pressure.
 * `supply`: pump or source. `discharge-pressure`: the hose, at the highest allowed pressure.
 */
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
  /** The same once the other bays have closed, valves and pump left as they are: what a tender gets when its neighbour shuts. */
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
  const ready = bays.map(readyBay)
  const trunk = line.trunk && readyLay(line.trunk)
  const cases = ready.map((_, index) => solveCase(line, trunk, ready.slice(0, index + 1)))
  for (const { busyCount, total_gpm, alonePressures_psi } of cases) {
    if (total_gpm <= 0) issues.push(issue('no-fill-flow', 'block', [], { busyCount, maxDischarge_psi }))
    alonePressures_psi.forEach((alone_psi, index) => {
      const max_psi = ready[index]?.maxInlet_psi ?? DEFAULT_MAX_INLET_PSI
      if (busyCount > 1 && alone_psi > max_psi + NOTICEABLE_PSI) {
        issues.push(issue('bay-pressure-when-alone', 'warn', [], { busyCount, bay: index + 1, alone_psi, max_psi }))
      }
    })
  }
  return { bayRate_gpm: cases.map(({ total_gpm, busyCount }) => total_gpm / busyCount), cases, issues }
}

const ROUNDS = 50
const NOTICEABLE_PSI = 0.5

/** A lay with its numbers worked out once: the search below asks for them thousands of times. */
type ReadyLay = { readonly resistance: number; readonly fittingCount: number; readonly rise_psi: number }
type ReadyBay = ReadyLay & {
  readonly inletCoefficient: number
  readonly maxInlet_psi: number
  /** The most a bay is let have: its vent's flow, or the flow at which its inlet's pressure is reached. */
  readonly cap_gpm: number
  readonly capBy: 'tender' | 'inlet-pressure'
}

function readyLay(lay: HoseLay): ReadyLay {
  return { resistance: layFriction_psiPerGpm2(lay), fittingCount: lay.fittingCount ?? 0, rise_psi: elevation_psi(lay.rise_ft ?? 0) }
}

function readyBay(bay: FillBay): ReadyBay {
  const { lay, inletCoefficient, maxInlet_psi = DEFAULT_MAX_INLET_PSI, fillLimit_gpm = DEFAULT_FILL_LIMIT_GPM } = bay
  requirePositive('inletCoefficient', inletCoefficient)
  requirePositive('maxInlet_psi', maxInlet_psi)
  requirePositive('fillLimit_gpm', fillLimit_gpm)
  const hose = readyLay(lay)
  const byPressure_gpm = inletCoefficient * Math.sqrt(maxInlet_psi)
  return {
    ...hose, resistance: hose.resistance + 1 / inletCoefficient ** 2, inletCoefficient, maxInlet_psi,
    cap_gpm: Math.min(fillLimit_gpm, byPressure_gpm),
    capBy: fillLimit_gpm <= byPressure_gpm ? 'tender' : 'inlet-pressure',
  }
}

/**
 * Searches by the pressure at the manifold: there bays and trunk follow in closed form, and all of them rise with it.
 */
function solveCase(line: FillLine, trunk: ReadyLay | undefined, busy: readonly ReadyBay[]): FillCase {
  const { supplyFlow_gpm, maxDischarge_psi } = line
  const demand_gpm = (manifold_psi: number) => totalFlow_gpm(busy, manifold_psi)
  const pump_psi = (manifold_psi: number) => Math.max(0, manifold_psi + (trunk ? readyLoss_psi(trunk, demand_gpm(manifold_psi)) : 0))
  const highest_psi = maxDischarge_psi - Math.min(0, trunk?.rise_psi ?? 0)
  const byHose_psi = bisect(0, highest_psi, (at_psi) => pump_psi(at_psi) <= maxDischarge_psi)
  let manifold_psi = bisect(0, byHose_psi, (at_psi) => demand_gpm(at_psi) <= supplyFlow_gpm(pump_psi(at_psi)))
  const supplyLimits = manifold_psi < byHose_psi
  const most_gpm = demand_gpm(manifold_psi)
  const isCapped = most_gpm >= busy.reduce((total, { cap_gpm }) => total + cap_gpm, 0) * (1 - 1e-9)
  // All gated: the same flows come at a lower pressure.
  if (isCapped) manifold_psi = bisect(manifold_psi, 0, (lower_psi) => demand_gpm(lower_psi) >= most_gpm * (1 - 1e-9))
  const pumpPressure_psi = Math.min(maxDischarge_psi, pump_psi(manifold_psi))
  // Downhill the bays may want more than the supply gives even with no pressure at the pump, uphill the trunk may let
  // nothing through: they share what there is.
  const isOutOfReach = pump_psi(manifold_psi) > maxDischarge_psi * (1 + 1e-9)
  const shareFactor = isOutOfReach ? 0 : Math.min(1, supplyFlow_gpm(pumpPressure_psi) / Math.max(1e-9, demand_gpm(manifold_psi)))
  const rates_gpm = busy.map((bay) => bayFlow_gpm(bay, manifold_psi) * shareFactor)
  return {
    busyCount: busy.length, rates_gpm, total_gpm: rates_gpm.reduce((total, rate_gpm) => total + rate_gpm, 0), pumpPressure_psi,
    inletPressures_psi: busy.map((bay, i) => ((rates_gpm[i] ?? 0) / bay.inletCoefficient) ** 2),
    alonePressures_psi: busy.map((bay, i) => alonePressure_psi(trunk, bay, pumpPressure_psi, manifold_psi, rates_gpm[i] ?? 0)),
    limitedBy: isCapped ? capLimit(busy) : supplyLimits ? 'supply' : 'discharge-pressure',
  }
}

const capLimit = (busy: readonly ReadyBay[]): FillLimit =>
  busy.every(({ capBy }) => capBy === 'inlet-pressure') ? 'inlet-pressure' : 'tender'

/** Flow through a bay's hose and inlet by the pressure at its start, gated to its cap. */
function bayFlow_gpm({ resistance, fittingCount, rise_psi, cap_gpm }: ReadyBay, start_psi: number): number {
  return Math.min(cap_gpm, flowForSpare_gpm(resistance, fittingCount, start_psi - rise_psi))
}

function totalFlow_gpm(busy: readonly ReadyBay[], manifold_psi: number): number {
  let total_gpm = 0
  for (const bay of busy) total_gpm += bayFlow_gpm(bay, manifold_psi)
  return total_gpm
}

const readyLoss_psi = ({ resistance, fittingCount, rise_psi }: ReadyLay, flow_gpm: number): number =>
  resistance * flow_gpm ** 2 + fittingCount * applianceLoss_psi('fitting', flow_gpm) + rise_psi

/** Pressure at a bay's inlet when only it still flows: the valve that gates it stays where it is, the pump at its pressure. */
function alonePressure_psi(trunk: ReadyLay | undefined, bay: ReadyBay, pump_psi: number, manifold_psi: number, flow_gpm: number): number {
  if (flow_gpm <= 0) return 0
  // Everything from the manifold on, gate included, as one resistance.
  const gated = Math.max(bay.resistance, (manifold_psi - bay.rise_psi) / flow_gpm ** 2)
  const spare_psi = pump_psi - bay.rise_psi - (trunk?.rise_psi ?? 0)
  const alone_gpm = Math.sqrt(Math.max(0, spare_psi) / (gated + (trunk?.resistance ?? 0)))
  return (Math.max(alone_gpm, flow_gpm) / bay.inletCoefficient) ** 2
}

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
