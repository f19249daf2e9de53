import type { SupplyChart } from '@/lib/supply'

export type HeldAt = { readonly time_s: number; readonly held_gal: number }

/**
 * Water in all portable tanks of a plan over time: their levels added up, straight between the moments at which any of them
 * turns.
 *
 * @returns rising moments; before its first one a tank holds nothing, after its last what it held then
 */
export function waterHeld({ tanks }: Pick<SupplyChart, 'tanks'>): HeldAt[] {
  const times = [...new Set(tanks.flatMap(({ levels }) => levels.map(({ time_s }) => time_s)))].sort((a, b) => a - b)
  return times.map((time_s) => ({ time_s, held_gal: tanks.reduce((sum, { levels }) => sum + levelAt(levels, time_s), 0) }))
}

function levelAt(levels: SupplyChart['tanks'][number]['levels'], time_s: number): number {
  const next = levels.findIndex((level) => level.time_s >= time_s)
  const after = levels[next]
  if (!after) return levels.at(-1)?.level_gal ?? 0
  // Where a level jumps, two entries share a moment: the later one is what stands from then on.
  if (after.time_s === time_s) return levels.findLast((level) => level.time_s === time_s)?.level_gal ?? after.level_gal
  const before = levels[next - 1]
  return before ? before.level_gal + ((after.level_gal - before.level_gal) * (time_s - before.time_s)) / (after.time_s - before.time_s) : 0
}
