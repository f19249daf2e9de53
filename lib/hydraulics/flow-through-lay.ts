import { requireNotNegative } from '../issue'
import { layFlow_gpm, type HoseLay } from './hose-lay'

export type PumpIntoLay = {
  /** What the pump gives at a discharge pressure, [psi] → [gpm], never rising: `draftSupply`. */
  readonly supply_gpm: (discharge_psi: number) => number
  /** Highest pressure the lay is pumped at. */
  readonly maxDischarge_psi: number
  readonly lay: HoseLay
  /** Left at the far end. */
  readonly outlet_psi: number
}

export type FlowThroughLay = {
  readonly flow_gpm: number
  /** At the pump, with that flow. */
  readonly discharge_psi: number
  /** What the pump gives beyond it at that pressure. */
  readonly spare_gpm: number
  /** `lay`: a larger hose or a second line passes more at the highest pressure; `pump`: the pump has no more to give. */
  readonly limitedBy: 'lay' | 'pump'
}

/** Halvings of the pressure: below a thousandth of a psi from any pressure a fire pump has. */
const STEP_COUNT = 24

/**
 * Most that a pump sends through a hose lay.
 *
 *   greatest Q with  supply(P) ≥ Q,  P = loss(Q) + outlet,  P ≤ the highest pressure pumped
 *
 * Through short or large hose the pump gives its most below the highest pressure, and more than it would there.
 *
 * @returns 0 gpm where the rise takes all pressure
 * @throws RangeError if a pressure is negative or the lay out of range
 * @source layLoss_psi
 */
export function flowThroughLay({ supply_gpm, maxDischarge_psi, lay, outlet_psi }: PumpIntoLay): FlowThroughLay {
  requireNotNegative('maxDischarge_psi', maxDischarge_psi)
  const passes = (discharge_psi: number) => layFlow_gpm(lay, discharge_psi, outlet_psi)
  const most_gpm = passes(maxDischarge_psi)
  const spare_gpm = supply_gpm(maxDischarge_psi) - most_gpm
  if (spare_gpm >= 0) return { flow_gpm: most_gpm, discharge_psi: maxDischarge_psi, spare_gpm, limitedBy: 'lay' }
  let low_psi = 0, high_psi = maxDischarge_psi
  for (let step = 0; step < STEP_COUNT; step++) {
    const mid_psi = (low_psi + high_psi) / 2
    if (passes(mid_psi) > supply_gpm(mid_psi)) high_psi = mid_psi
    else low_psi = mid_psi
  }
  return { flow_gpm: supply_gpm(high_psi), discharge_psi: high_psi, spare_gpm: 0, limitedBy: 'pump' }
}
