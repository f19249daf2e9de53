import { requireNotNegative } from '../issue'

/** `fitting`: a wye, siamese, manifold or four-way valve. `master-stream`: any monitor, standpipe or aerial piping. */
export type ApplianceKind = 'fitting' | 'master-stream'

const FITTING_PSI = 10
/** Below this flow a fitting costs nothing. */
export const FITTING_FROM_GPM = 350
const MASTER_STREAM_PSI = 25

/**
 * Loss in an appliance of the lay.
 *
 *   fitting: 0 below 350 gpm, 10 psi from 350 gpm on · master stream: 25 psi at any flow
 *
 * A step at 350 gpm is what the trade works with.
 *
 * @param kind     of appliance
 * @param flow_gpm through it, 0 or more
 * @returns loss, [psi]; 0 without flow
 * @throws RangeError if negative
 * @source driver/operator handbook study cards (seen-2nd), tests/reference/hose-friction.json
 */
export function applianceLoss_psi(kind: ApplianceKind, flow_gpm: number): number {
  requireNotNegative('flow_gpm', flow_gpm)
  if (flow_gpm === 0) return 0
  if (kind === 'master-stream') return MASTER_STREAM_PSI
  return flow_gpm >= FITTING_FROM_GPM ? FITTING_PSI : 0
}
