import { requireThat } from '../issue'
import type { DependableFlow } from '../supply'
import { nightDrawer } from './draw-night'
import type { DoubtModel } from './model'
import { nightFlow } from './night-flow'
import { shareError } from './quantile'
import { DEPENDABLE_SHARE, NIGHT_COUNT, SEED } from './usual-nights'

/**
 * Rank of the dependable flow among rising flows: so many nights may fall short of it.
 *
 * @param share 0 to 1
 */
export const rankOf = (nightCount: number, share: number): number =>
  Math.max(0, Math.min(nightCount - 1, Math.floor(nightCount * (1 - share) + 1e-9)))

/**
 * The dependable flow from the sustainable flow of every night.
 *
 * @param flows_gpm in any order; flows above the answer's upper bound may be any flow above it
 * @throws RangeError if there is no night or the share is not between 0 and 1
 */
export function dependableFrom(flows_gpm: ArrayLike<number>, seed: number, share = DEPENDABLE_SHARE): DependableFlow {
  const nightCount = flows_gpm.length
  requireThat(nightCount > 0, 'flows_gpm.length', nightCount, '1 or more')
  requireThat(share > 0 && share < 1, 'share', share, 'between 0 and 1')
  const rising = Float64Array.from(flows_gpm).sort()
  const error = shareError(share, nightCount)
  const at = (wanted: number) => rising[rankOf(nightCount, Math.min(1, Math.max(0, wanted)))]!
  return { flow_gpm: at(share), share, shareError: error, low_gpm: at(share + error), high_gpm: at(share - error), nightCount, seed }
}

/** Nights, fewest first, that can still matter: those up to the upper bound of the dependable flow. */
const mattering = (nightCount: number, share: number): number => rankOf(nightCount, Math.max(0, share - shareError(share, nightCount))) + 1

/** The lowest flows seen so far, as many as can matter: whatever holds the greatest of them is decided. */
class LowestFlows {
  readonly #most: number
  readonly #rising: number[] = []

  /** @param most how many are kept, 1 or more */
  constructor(most: number) {
    this.#most = most
  }

  /** A night that holds this flow cannot be among them: what it holds beyond does not matter. */
  get ceiling_gpm(): number {
    return this.#rising.length < this.#most ? Infinity : this.#rising[this.#most - 1]!
  }

  add(flow_gpm: number): void {
    if (flow_gpm >= this.ceiling_gpm) return
    let at = this.#rising.length
    while (at > 0 && this.#rising[at - 1]! > flow_gpm) at--
    this.#rising.splice(at, 0, flow_gpm)
    if (this.#rising.length > this.#most) this.#rising.pop()
  }
}

export type DependableOptions = { readonly nightCount?: number; readonly share?: number; readonly seed?: number }

/**
 * Greatest flow that is sustained, by the rule of `sustainableFlow`, in a share of the nights. It
 * takes for granted that nothing breaks.
 *
 * A night's own sustainable flow is the greatest that it holds together with every lower flow of the
 * grid, so the share of nights that hold a flow falls as the flow rises, though a single night need
 * not be monotone; the answer is a quantile of the nights' flows. As nights come in, those that hold
 * the highest flow that can still matter are decided and left there.
 *
 * @throws RangeError if the share is not between 0 and 1 or no night is asked for
 */
export function dependableFlow(model: DoubtModel, { nightCount = NIGHT_COUNT, share = DEPENDABLE_SHARE, seed = SEED }: DependableOptions = {}): DependableFlow {
  const draw = nightDrawer(model, seed)
  const lowest = new LowestFlows(mattering(nightCount, share))
  const flows_gpm = new Float64Array(nightCount)
  for (let night = 0; night < nightCount; night++) {
    const { spec, pump_gpm, isBlocked } = draw(night)
    const flow_gpm = isBlocked ? 0 : nightFlow(spec, pump_gpm, model.grid_gpm, lowest.ceiling_gpm).flow_gpm
    flows_gpm[night] = flow_gpm
    lowest.add(flow_gpm)
  }
  return dependableFrom(flows_gpm, seed, share)
}
