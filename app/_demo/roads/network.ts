import type { Spot } from '../frame'
import { findCrossing, nearestOnLine, type Line } from '../geometry/line'
import { gap } from '../geometry/spot'

export type Tags = Readonly<Record<string, string>>

/** A junction or bend. Roads meet where they hold the same node. */
export type RoadNode = { readonly id: number; readonly spot: Spot; tags?: Tags }
export type Road = { readonly key: string; nodes: RoadNode[]; readonly tags: Tags }

export type LayOptions = {
  /** Ends within this distance of another road join it. Default 25. */
  snap_m?: number
  /** The last spot stays where it is, whatever road is near. */
  isEndFree?: boolean
  /** Crosses other roads without a junction. */
  isApart?: boolean
}

/** Vertices nearer than this to a junction become the junction. */
const MERGE_M = 11

export class Network {
  readonly roads: Road[] = []
  #nextId = 1

  node(spot: Spot): RoadNode {
    return { id: this.#nextId++, spot }
  }

  /** Lays a road along a line: joins its ends to roads near them, and makes a junction of each crossing. */
  lay(key: string, line: Line, tags: Tags, { snap_m = 25, isEndFree = false, isApart = false }: LayOptions = {}): Road {
    let nodes = line.map((here) => this.node(here))
    if (!isApart) {
      nodes = this.#crossed(nodes)
      nodes[0] = this.#joint(nodes[0]!, snap_m)
      if (!isEndFree) nodes[nodes.length - 1] = this.#joint(nodes[nodes.length - 1]!, snap_m)
    }
    const road: Road = { key, nodes: nodes.filter((node, i) => i === 0 || node !== nodes[i - 1]), tags }
    this.roads.push(road)
    return road
  }

  road(key: string): Road {
    const found = this.roads.find((road) => road.key === key)
    if (!found) throw new RangeError(`road is ${key}, must be one that was laid`)
    return found
  }

  /** Node of a road nearest to a spot, inserted when no vertex is near. */
  nodeOn(road: Road, near: Spot): RoadNode {
    const line = road.nodes.map(({ spot }) => spot)
    const { spot, segment } = nearestOnLine(line, near)
    const [a, b] = [road.nodes[segment]!, road.nodes[segment + 1]!]
    const [toA, toB] = [gap(a.spot, spot), gap(b.spot, spot)]
    if (Math.min(toA, toB) <= MERGE_M) return toA <= toB ? a : b
    const node = this.node(spot)
    road.nodes.splice(segment + 1, 0, node)
    return node
  }

  /** A node of the road at a spot on it, made exactly there unless one is within 1.5 m. */
  cut(road: Road, at: Spot): RoadNode {
    const { spot, segment } = nearestOnLine(road.nodes.map((node) => node.spot), at)
    const near = [road.nodes[segment]!, road.nodes[segment + 1]!].find((node) => gap(node.spot, spot) < 1.5)
    if (near) return near
    const node = this.node(spot)
    road.nodes.splice(segment + 1, 0, node)
    return node
  }

  #joint(end: RoadNode, snap_m: number): RoadNode {
    let best: { road: Road; away: number } | undefined
    for (const road of this.roads) {
      if (road.tags.railway) continue
      const { away } = nearestOnLine(road.nodes.map(({ spot }) => spot), end.spot)
      if (away <= snap_m && away < (best?.away ?? Infinity)) best = { road, away }
    }
    return best ? this.nodeOn(best.road, end.spot) : end
  }

  #crossed(nodes: readonly RoadNode[]): RoadNode[] {
    const out: RoadNode[] = [nodes[0]!]
    for (let i = 0; i + 1 < nodes.length; i++) {
      const [a, b] = [nodes[i]!, nodes[i + 1]!]
      const met: { at: number; node: RoadNode }[] = []
      for (const road of this.roads) {
        if (road.tags.railway) continue
        for (let k = 0; k + 1 < road.nodes.length; k++) {
          const crossing = findCrossing(a.spot, b.spot, road.nodes[k]!.spot, road.nodes[k + 1]!.spot)
          if (!crossing) continue
          const before = road.nodes.length
          met.push({ at: crossing.ab, node: this.nodeOn(road, crossing.spot) })
          k += road.nodes.length - before
        }
      }
      met.sort((p, q) => p.at - q.at)
      for (const { node } of met) {
        const last = out[out.length - 1]!
        if (last !== node) {
          if (gap(last.spot, node.spot) <= MERGE_M && out.length > 1 && last === a) out.pop()
          out.push(node)
        }
      }
      const last = out[out.length - 1]!
      if (gap(last.spot, b.spot) > MERGE_M || met.length === 0) out.push(b)
      else if (i + 2 === nodes.length) continue
    }
    return out
  }
}
