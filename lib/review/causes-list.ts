/**
 * Parts in which what happened may differ from the plan. `travel`: the road, both ways. `waiting`: for a position, a bay or
 * a turn. `hookUp`: into and out of positions and bays. `filling` and `dumping`: water running, standing before a full tank included.
 * `notFull`: less aboard than planned. `tenders`: missing, gone early, or more than planned. `start`: tenders and sites
 * ready later or sooner. `supply`: source and fill pump, all that fills there share.
 */
export const causes = ['travel', 'waiting', 'hookUp', 'filling', 'dumping', 'notFull', 'tenders', 'start', 'supply'] as const
export type Cause = (typeof causes)[number]
