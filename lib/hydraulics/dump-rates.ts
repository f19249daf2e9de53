import { requirePositive, requireThat } from '../issue'
import { dumpRates_gpm, type DumpOpening } from './gravity-dump'

/** How a tender gives its water: its own weight, a jet that helps it out of the opening, or its pump. */
export const dumpWays = ['gravity', 'jet', 'pump'] as const
export type DumpWay = (typeof dumpWays)[number]

export type TenderDump = {
  readonly way: DumpWay
  readonly tank_gal: number
  readonly usable_gal: number
  /** Average over the load, where it is known. */
  readonly average_gpm?: number
  /** Opening of the valve in use and the water over it when the tank is full, for gravity. */
  readonly opening?: DumpOpening
  readonly fullHead_ft?: number
  /** Most that vents and baffles let through. */
  readonly cap_gpm?: number
}

/**
 * Dump rates of a tender by equal parts of its load, first part first; undefined where neither an average nor an opening is known.
 *
 *   gravity: the rates of the opening under the falling head, capped by vents and baffles; scaled so that the load
 *   takes as long as the known average says
 *   jet, pump: the average throughout, capped; neither lives on the head
 *
 * @param partCount parts of a falling rate; default 8
 * @throws RangeError if out of range
 * @source dumpRates_gpm; a jet or a pump holding its rate: common practice, no source
 */
export function findTenderDumpRates_gpm(dump: TenderDump, partCount = 8): number[] | undefined {
  const { way, tank_gal, usable_gal, average_gpm, opening, fullHead_ft, cap_gpm = Infinity } = dump
  if (average_gpm !== undefined) requirePositive('average_gpm', average_gpm)
  requireThat(cap_gpm > 0, 'cap_gpm', cap_gpm, 'above 0')
  if (way !== 'gravity' || !opening || fullHead_ft === undefined) return average_gpm === undefined ? undefined : [Math.min(average_gpm, cap_gpm)]
  const free_gpm = dumpRates_gpm({ tank_gal, usable_gal, fullHead_ft, opening, ...(cap_gpm !== Infinity && { cap_gpm }) }, partCount)
  if (average_gpm === undefined) return free_gpm
  const freeAverage_gpm = free_gpm.length / free_gpm.reduce((sum, rate_gpm) => sum + 1 / rate_gpm, 0)
  return free_gpm.map((rate_gpm) => (rate_gpm * average_gpm) / freeAverage_gpm)
}
