import type { LoggedEvent } from '@/lib/shuttle'

/** One event, one line: minutes:seconds, what, who, where, how much. */
export function lineOf({ time_s, kind, tenderId, siteId, water_gal, flow_gpm }: LoggedEvent): string {
  const tenths = Math.round(time_s * 10)
  const clock = `${Math.floor(tenths / 600)}:${((tenths % 600) / 10).toFixed(1).padStart(4, '0')}`
  const parts = [clock.padStart(8), kind.padEnd(16), (tenderId ?? '').padEnd(8), (siteId ?? '').padEnd(6)]
  if (water_gal !== undefined) parts.push(`${water_gal.toFixed(1)} gal`)
  if (flow_gpm !== undefined) parts.push(`${flow_gpm.toFixed(1)} gpm`)
  return parts.join(' ').trimEnd()
}
