import type { Point } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import type { LegAsk, RoadNote } from '@/lib/plan'
import { findRoute, isRoute, oneToAll, routeFromTree, weighGraph, type RoadGraph, type RoadWeights, type RouteTree, type TreeDirection } from '@/lib/roads'
import { legFromRoute, type FoundLeg } from '@/lib/supply'
import { RecentMap } from './recent-map'

/** Of each vehicle the graph is weighed once; of each fixed end and vehicle all ways are found once. */
const WEIGHTS_KEPT = 24
const TREES_KEPT = 48

/** Answers leg asks over one district's roads, under one set of road notes. */
export class RoadDesk {
  readonly graph: RoadGraph
  readonly #notes: readonly RoadNote[]
  readonly #weights = new RecentMap<RoadWeights>(WEIGHTS_KEPT)
  readonly #trees = new RecentMap<RouteTree | Issue>(TREES_KEPT)

  constructor(graph: RoadGraph, notes: readonly RoadNote[]) {
    this.graph = graph
    this.#notes = notes
  }

  /** The way for one ask, by a search of its own. */
  find(ask: LegAsk): FoundLeg | Issue {
    const route = findRoute(this.graph, this.#weightsFor(ask), ask.from, ask.to, ask.via)
    return isRoute(route) ? legFromRoute(route) : route
  }

  /**
   * The way for one ask of which one end moves and the other stays: equal to `find`, and
   * from the second time on without a search.
   *
   * @param fixed which end stays
   */
  findFrom(ask: LegAsk, fixed: 'from' | 'to'): FoundLeg | Issue {
    if (ask.via.length > 0) return this.find(ask)
    const tree = this.#treeFor(ask, ask[fixed], fixed)
    if ('code' in tree) return tree
    const route = routeFromTree(tree, fixed === 'from' ? ask.to : ask.from)
    return isRoute(route) ? legFromRoute(route) : route
  }

  #weightsFor(ask: LegAsk): RoadWeights {
    const { gross_lb, height_ft, width_ft } = ask
    return this.#weights.getOrMake(vehicleKey(ask), () => weighGraph(this.graph, { gross_lb, height_ft, width_ft }, this.#notes))
  }

  #treeFor(ask: LegAsk, point: Point, direction: TreeDirection): RouteTree | Issue {
    const key = `${direction} ${point.lat} ${point.lon} ${vehicleKey(ask)}`
    return this.#trees.getOrMake(key, () => oneToAll(this.graph, this.#weightsFor(ask), point, direction))
  }
}

const vehicleKey = ({ gross_lb, height_ft, width_ft }: LegAsk): string => `${gross_lb} ${height_ft} ${width_ft}`
