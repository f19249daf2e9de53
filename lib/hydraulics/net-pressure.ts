import { requireNotNegative } from '../issue'
import { psiFromFeetOfWater } from '../units'

/**
 * Pressure a pump must make beyond what its gauge shows at the discharge, because it first lifts the water.
 *
 *   PC = (lift + intake hose loss) / 2.3        net = discharge + PC
 *
 * @param lift_ft        negative when the water stands above the intake
 * @param suctionLoss_ft 0 or more
 * @returns pressure correction, [psi]
 * @throws RangeError if the loss is negative
 * @source driver/operator handbook study cards (seen-2nd), tests/reference/pump-curve.json
 */
export function pressureCorrection_psi(lift_ft: number, suctionLoss_ft: number): number {
  requireNotNegative('suctionLoss_ft', suctionLoss_ft)
  return psiFromFeetOfWater(lift_ft + suctionLoss_ft)
}
