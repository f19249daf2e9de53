import type { Point } from '../geo'
import { oneToAll } from './one-to-all'
import type { RoadGraph } from './road-graph'
import { START_STOP_S } from './route'
import { findDriveFromTree_s } from './route-from-tree'
import type { RoadWeights } from './weigh-graph'

/**
 * Travel times from each of some places to each of others, one search a row.
 *
 * @returns `[from][to]`, [s] as in `Route.travel_s`; undefined where there is no way
 */
export function travelMatrix(graph: RoadGraph, weights: RoadWeights, froms: readonly Point[], tos: readonly Point[]): (number | undefined)[][] {
  return froms.map((from) => {
    const tree = oneToAll(graph, weights, from, 'from')
    if ('code' in tree) return tos.map(() => undefined)
    return tos.map((to) => {
      const drive_s = findDriveFromTree_s(tree, to)
      return drive_s === undefined ? undefined : drive_s + START_STOP_S
    })
  })
}
