import type { ApplianceKind, DraftAsk, HydrantTest, PumperHydraulics } from '../hydraulics'

/** One line of hose; its coefficient and working pressure by size unless its own are known. */
export type HoseLine = { readonly size_in: number; readonly coefficient?: number; readonly working_psi?: number }

/** A stretch of the lay: lines side by side, all as long as the stretch. */
export type LaySegment = {
  readonly length_ft: number
  readonly lines: readonly HoseLine[]
  /** Wyes, siameses, manifolds on it, each passing the whole flow. */
  readonly appliances?: readonly { readonly at_ft: number; readonly kind: ApplianceKind }[]
}

/** Ground under the lay, by feet of hose from the source. */
export type GroundPoint = { readonly distance_ft: number; readonly height_ft: number }

/**
 * Where the water comes from: a pumper at draft, or one fed by a pressure hydrant. It stands at the near end of the lay.
 *
 * `mostDischarge_psi`: the highest pressure it is run at, whatever its curve gives.
 */
export type RelaySource = { readonly mostDischarge_psi?: number } & (
  | { readonly id: string; readonly kind: 'draft'; readonly draft: Omit<DraftAsk, 'ask'> }
  | { readonly id: string; readonly kind: 'hydrant'; readonly pumper: PumperHydraulics; readonly hydrant: HydrantTest }
)

/** A pumper that may stand in the lay. */
export type RelayPumper = {
  readonly id: string
  readonly pumper: PumperHydraulics
  /** Highest pressure it is run at, whatever its curve gives. */
  readonly mostDischarge_psi?: number
  /** Open relay: how it drafts from its portable tank; default its rated suction from a tank on level ground. */
  readonly tankDraft?: Omit<DraftAsk, 'ask'>
}

/** `closed`: hose from pump to pump. `open`: each pumper drafts from a portable tank that the one before fills. */
export type RelayMode = 'closed' | 'open'

export type RelaySpec = {
  readonly mode: RelayMode
  readonly source: RelaySource
  /** At hand beside the source pumper; at most 12. */
  readonly pumpers: readonly RelayPumper[]
  readonly lay: readonly LaySegment[]
  /** By rising distance; level before its first and after its last point, and all level when empty. */
  readonly profile: readonly GroundPoint[]
  /** Where a pumper may stand, by feet of hose from the source; anywhere when absent. */
  readonly stations_ft?: readonly number[]
  readonly wanted?: RelayPressures
}

/** Pressures that a relay keeps; each has a default. */
export type RelayPressures = {
  /** Left at each pumper's intake. */
  readonly residual_psi?: number
  /** Left at the far end of the lay. */
  readonly outlet_psi?: number
  /** Left anywhere in the hose. */
  readonly leastHose_psi?: number
  /** Left where hose ends in a portable tank. */
  readonly tankInlet_psi?: number
}

/**
 * Defaults of a relay.
 *
 * Residual 20 psi: built into the lesson plan's distance table (seen-2nd); others say 25, or 20 to 50. Outlet: as into the
 * intake of another pumper. Least in the hose 5 psi, tank inlet 5 psi: assumed, no source.
 */
export const relayDefaults: Required<RelayPressures> = { residual_psi: 20, outlet_psi: 20, leastHose_psi: 5, tankInlet_psi: 5 }

/** From a portable tank on level ground up to the pump: assumed, the tank drawn half down. */
export const TANK_LIFT_FT = 2
export const MOST_PUMPERS = 12
