import type { MapSite } from '../map-types'

/** What a vehicle goes by stands in its mark; its name is shown when asked for, or where it has something to say. */
export const isNumbered = ({ kind, letter, isMarked }: MapSite): boolean => kind === 'tender' && letter !== undefined && !isMarked

/** Whose name is shown where there is not room for all. */
export const rankOf = ({ isChosen, isMarked, kind, isGhost }: MapSite): number =>
  (isChosen ? 0 : isMarked ? 100 : isGhost ? 300 : 200) + siteOrder.indexOf(kind)

const siteOrder: readonly MapSite['kind'][] = ['fireGround', 'dumpSite', 'fillSite', 'draftSite', 'source', 'hazard', 'roadNote', 'station']
