import type { SupplyResult } from '@/lib/supply'
import { formatBetween, formatFrom, formatUntil } from './format-figure'
import { say } from './say'

type Times = Pick<SupplyResult, 'firstArrival_s' | 'firstWater_s' | 'tankEmpty_s' | 'supplyReady_s' | 'gap_s' | 'short_s'>

/** A time of the answer as it is shown; the gap is that between the minutes shown. */
export function timeWords(figure: keyof Times, times: Times): string {
  const value = times[figure]
  if (value === null) return say('quantity.unknown')
  const { tankEmpty_s, supplyReady_s } = times
  if (figure === 'gap_s') return value > 0 && tankEmpty_s !== null && supplyReady_s !== null ? formatBetween(tankEmpty_s, supplyReady_s) : formatFrom(value)
  return figure === 'tankEmpty_s' ? formatUntil(value) : formatFrom(value)
}
