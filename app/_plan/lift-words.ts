import type { FillSiteResult } from '@/lib/supply'
import { formatQuantity, say, type UnitSystem } from '../_text'

/** The lift an answer counts, and what it is made of where that is more than one number: "19.9 ft (18.5 ft measured + 1.4 ft the water falls)", "10 ft (assumed)". */
export function liftWords({ lift_ft, seasonDrop_ft, liftFrom }: Pick<FillSiteResult, 'lift_ft' | 'seasonDrop_ft' | 'liftFrom'>, system: UnitSystem): string {
  const feet = (value: number) => formatQuantity(value, 'ft', system)
  if (lift_ft === null) return say('quantity.unknown')
  if (!seasonDrop_ft || !liftFrom) return liftFrom === 'assumed' ? say('result.assumed', { what: feet(lift_ft) }) : feet(lift_ft)
  return say('plan.lift.of', { lift: feet(lift_ft), usual: feet(lift_ft - seasonDrop_ft), from: liftFrom, fall: feet(seasonDrop_ft) })
}
