import { issue, type Issue } from '../issue'
import type { DraftSite, Source } from '../plan'

/** Hard suction reaches some 30 ft; a drawn shore and a place set on a map may be off by the rest. Assumed. [ft] */
const NEAR_ENOUGH_FT = 200

/**
 * Whether a draft site stands farther from its water than any suction reaches.
 *
 * @param away_ft from the nearest water of the source that the map has drawn
 * @returns `draft-site-far` (warn) beyond 200 ft and the site's own hose run and pipe; undefined nearer by
 */
export function farFromWater({ id, hoseRun_ft = 0, dryHydrant }: Pick<DraftSite, 'id' | 'hoseRun_ft' | 'dryHydrant'>, source: Pick<Source, 'id'>, away_ft: number): Issue | undefined {
  return away_ft > NEAR_ENOUGH_FT + hoseRun_ft + (dryHydrant?.pipe_ft ?? 0) ? issue('draft-site-far', 'warn', [id, source.id], { away_ft }) : undefined
}
