import type { Spot } from '../frame'
import { findCrossing } from '../geometry/line'
import { gap } from '../geometry/spot'
import type { MappedStream } from '../land/mapped-streams'
import type { Stream } from '../land/streams'
import type { Network, Road, RoadNode, Tags } from './network'

/** A part of a road whose tags differ, between two of its nodes. */
export type Stretch = { from: RoadNode; to: RoadNode; tags: Tags }
export type StretchPlan = { road: string; from: readonly [number, number]; to: readonly [number, number]; tags: Tags }

export type Crossing = { road: Road; spot: Spot; stream: Stream }

/** Where roads cross running water, road by road. */
export function findCrossings(network: Network, streams: readonly MappedStream[]): Crossing[] {
  const found: Crossing[] = []
  for (const road of network.roads)
    for (let i = 0; i + 1 < road.nodes.length; i++) {
      const [a, b] = [road.nodes[i]!.spot, road.nodes[i + 1]!.spot]
      for (const { stream, line } of streams)
        for (let k = 0; k + 1 < line.length; k++) {
          const crossing = findCrossing(a, b, line[k]!, line[k + 1]!)
          if (crossing) found.push({ road, spot: crossing.spot, stream })
        }
    }
  return found
}

/** Nodes of a road a given way before and after a spot on it, measured along the road. */
export function nodesAround(network: Network, road: Road, spot: Spot, reach_m: number): { from: RoadNode; to: RoadNode } {
  const at = network.cut(road, spot)
  const walk = (step: 1 | -1): Spot => {
    let left = reach_m
    let i = road.nodes.indexOf(at)
    for (; road.nodes[i + step]; i += step) {
      const [here, next] = [road.nodes[i]!.spot, road.nodes[i + step]!.spot]
      const length = gap(here, next)
      if (length >= left) return { x: here.x + ((next.x - here.x) * left) / length, y: here.y + ((next.y - here.y) * left) / length }
      left -= length
    }
    return road.nodes[i]!.spot
  }
  const [before, after] = [walk(-1), walk(1)]
  return { from: network.cut(road, before), to: network.cut(road, after) }
}

/** A road in pieces of equal tags, each a run of nodes that shares its ends with the next. */
export function piecesOf(road: Road, stretches: readonly Stretch[], breaks: ReadonlySet<RoadNode>): { nodes: RoadNode[]; tags: Tags }[] {
  const covers = stretches.map(({ from, to, tags }) => {
    const [i, j] = [road.nodes.indexOf(from), road.nodes.indexOf(to)]
    return { first: Math.min(i, j), last: Math.max(i, j), tags }
  })
  const cuts = new Set([0, road.nodes.length - 1])
  for (const { first, last } of covers) cuts.add(first).add(last)
  road.nodes.forEach((node, i) => breaks.has(node) && cuts.add(i))
  const at = [...cuts].filter((i) => i >= 0).sort((p, q) => p - q)
  return at.slice(1).map((last, n) => {
    const first = at[n]!
    const tags = covers.filter((cover) => cover.first <= first && cover.last >= last).reduce((sum, cover) => ({ ...sum, ...cover.tags }), road.tags)
    return { nodes: road.nodes.slice(first, last + 1), tags }
  })
}
