import type { DraftCapacity, SuctionSetup } from '@/lib/hydraulics'
import type { Unit } from '@/lib/units'
import { displayUnit, formatGiven, formatQuantity, formatValue, say, UNIT_SPACE, type QuantityFormat, type UnitSystem } from '../_text'
import '../_text/areas/draft'

/** Two ends of a range without their unit, flows as `formatGiven` shows them; one figure where both read the same. */
export function rangeValue(low: number, high: number, unit: Unit, system: UnitSystem): string {
  const format: QuantityFormat = unit === 'gpm' ? { style: 'headline', toward: 'down' } : {}
  const [a, b] = [formatValue(low, unit, system, format), formatValue(high, unit, system, format)]
  return a === b ? b : `${a}–${b}`
}

/** The same with the unit, once. */
export const rangeText = (low: number, high: number, unit: Unit, system: UnitSystem): string =>
  rangeValue(low, high, unit, system) + UNIT_SPACE + displayUnit(unit, system).symbol

/** What can be drawn: a range where its ends are more than a gallon apart. */
export const flowText = ({ flowLow_gpm, flowHigh_gpm, flow_gpm }: Pick<DraftCapacity, 'flowLow_gpm' | 'flowHigh_gpm' | 'flow_gpm'>, system: UnitSystem): string =>
  flowLow_gpm < flowHigh_gpm - 1 ? rangeText(flowLow_gpm, flowHigh_gpm, 'gpm', system) : formatGiven(flow_gpm, system)

/** A set-up in a line: "two 6 in, 20 ft, floating strainer". */
export function setupText({ size_in, length_ft, lineCount, strainer = 'barrel', intake = 'side', dryHydrant }: SuctionSetup, system: UnitSystem): string {
  const size = formatQuantity(size_in, 'in', system)
  return [
    say('draft.setup.lines', { count: lineCount, size }),
    formatQuantity(length_ft, 'ft', system),
    dryHydrant ? say('draft.setup.hydrant', { pipe: formatQuantity(dryHydrant.pipe_in, 'in', system) }) : say(`choice.strainer.${strainer}`).toLowerCase(),
    ...(intake === 'side' ? [] : [say(`choice.intake.${intake}`).toLowerCase()]),
  ].join(', ')
}

/** A valve's share as a hand can set it: to a twentieth. */
export const roundShare = (share: number): number => Math.round(share * 20) / 20

/** How far a valve stands open, for the choice of words: what rounds to all of it is not all of it. */
export function openWord(share: number | undefined): 'yes' | 'nearly' | 'no' {
  if (share === undefined || share >= 1) return 'yes'
  return roundShare(share) >= 1 ? 'nearly' : 'no'
}
