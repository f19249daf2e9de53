import { issue, type Issue } from '../issue'
import type { Season, Source } from '../plan'

/** How far a source's surface stands below its usual level in a season. */
export type SeasonDrop = {
  /** The season asked for. */
  readonly season: Season
  /** The season whose fall is counted: another than asked for where that one is not recorded. */
  readonly counted: Season
  readonly drop_ft: number
  readonly issues: readonly Issue[]
}

export const usualSeason: SeasonDrop = { season: 'usual', counted: 'usual', drop_ft: 0, issues: [] }

/**
 * Fall of a source's surface in a season, as entered; a drought falls no less than a dry season. A cistern stands as full as it
 * is kept, and a main has no level, so nobody is asked for theirs.
 *
 * @param source absent: nothing falls
 * @param season absent: the dry one where its fall is known, for a plan must hold whenever the fire comes
 * @returns the fall and the season it belongs to; issues `season-drop-missing` (warn) where that of the season asked for is not
 *   recorded, `source-fall-unknown` (note) where no season was asked for and no fall is recorded, and `season-inflow-usual` (note)
 *   where an entered inflow is counted on
 */
export function seasonDrop(source: Source | undefined, season?: Season): SeasonDrop {
  if (!source || source.kind === 'pressureHydrant') return { ...usualSeason, season: season ?? 'usual' }
  if (season === undefined) return unasked(source)
  if (season === 'usual') return usualSeason
  const known = [source.seasonalDrop_ft, ...(season === 'drought' ? [source.droughtDrop_ft] : [])].filter((drop) => drop !== undefined)
  const drop_ft = Math.max(0, ...known)
  const isRecorded = (season === 'dry' ? source.seasonalDrop_ft : source.droughtDrop_ft) !== undefined || (source.kind === 'cistern' && known.length === 0)
  const counted = isRecorded ? season : known.length > 0 ? 'dry' : 'usual'
  const issues: Issue[] = []
  if (!isRecorded) issues.push(issue('season-drop-missing', 'warn', [source.id], { season, counted, drop_ft }))
  if (source.inflow_gpm !== undefined && source.inflow_gpm > 0) issues.push(issue('season-inflow-usual', 'note', [source.id], { season, inflow_gpm: source.inflow_gpm }))
  return { season, counted, drop_ft, issues }
}

function unasked(source: Source): SeasonDrop {
  if (source.seasonalDrop_ft !== undefined) return { season: 'dry', counted: 'dry', drop_ft: source.seasonalDrop_ft, issues: [] }
  return { ...usualSeason, issues: source.kind === 'cistern' ? [] : [issue('source-fall-unknown', 'note', [source.id])] }
}
