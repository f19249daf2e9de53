import type { GaugeSign } from '@/lib/priming'
import { formatQuantity, say, type UnitSystem } from '../../_text'
import '../../_text/areas/draft'

const unitOf = { discharge_psi: 'psi', intake_inHg: 'inHg', tank_gal: 'gal', clock_s: 's' } as const

/** Water to keep goes up to the same step as in the budget beside it; nobody reads a clock to the second here. */
export function shownSign(gauge: GaugeSign['gauge'], value: number, system: UnitSystem): string {
  if (gauge === 'tank_gal') return formatQuantity(value, 'gal', system, { style: 'headline', toward: 'up' })
  return formatQuantity(value, unitOf[gauge], system, gauge === 'discharge_psi' ? { digits: 0 } : gauge === 'clock_s' ? { style: 'headline' } : {})
}

const signText = ({ gauge, sign, value }: GaugeSign, system: UnitSystem): string =>
  say(`draft.sign.${gauge}.${sign}`, { value: shownSign(gauge, value, system) })

/** Several signs as one. */
export const joined = (signs: readonly GaugeSign[], key: 'draft.sign.and' | 'draft.sign.or', system: UnitSystem): string =>
  signs.map((sign) => signText(sign, system)).reduce((first, second) => say(key, { first, second }))
