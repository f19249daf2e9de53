import { issue, type Issue } from '../issue'
import type { Season, Source } from '../plan'

/** How far a source's surface stands below its usual level in a season. */
export type SeasonDrop = { readonly season: Season; readonly drop_ft: number; readonly issues: readonly Issue[] }

export const usualSeason: SeasonDrop = { season: 'usual', drop_ft: 0, issues: [] }

/**
 * Fall of a source's surface in a season, as entered; a drought falls no less than a dry season.
 *
 * @param source absent: nothing falls
 * @param season absent: the dry one where its fall is known, for a plan must hold whenever the fire comes
 * @returns the fall; issues `season-drop-missing` (warn) where nobody has said, then 0 is used, and
 *   `season-inflow-usual` (note) where an entered inflow is counted on
 */
export function seasonDrop(source: Source | undefined, season?: Season): SeasonDrop {
  if (season === undefined) return source?.seasonalDrop_ft !== undefined && source.kind !== 'pressureHydrant' ? { season: 'dry', drop_ft: source.seasonalDrop_ft, issues: [] } : usualSeason
  if (season === 'usual' || !source || source.kind === 'pressureHydrant') return { ...usualSeason, season }
  const known = [source.seasonalDrop_ft, ...(season === 'drought' ? [source.droughtDrop_ft] : [])].filter((drop) => drop !== undefined)
  const own = season === 'dry' ? source.seasonalDrop_ft : source.droughtDrop_ft
  const issues: Issue[] = []
  if (own === undefined) issues.push(issue('season-drop-missing', 'warn', [source.id], { season }))
  if (source.inflow_gpm !== undefined && source.inflow_gpm > 0) issues.push(issue('season-inflow-usual', 'note', [source.id], { season, inflow_gpm: source.inflow_gpm }))
  return { season, drop_ft: Math.max(0, ...known), issues }
}
