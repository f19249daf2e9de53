import { pointFromSpot, type Spot } from '../frame'
import type { Area } from '../geometry/contour'
import type { Ring } from '../geometry/polygon'
import type { Tags } from '../roads/network'

export type OsmNode = { id: number; lat: number; lon: number; tags?: Tags }
export type OsmWay = { id: number; nodeIds: readonly number[]; tags: Tags }
export type OsmMember = { type: 'node' | 'way'; ref: number; role: string }
export type OsmRelation = { id: number; members: readonly OsmMember[]; tags: Tags }

/** Elements of a map in the open OpenStreetMap data model, numbered from 1 in the order they are added. */
export class OsmStore {
  readonly nodes: OsmNode[] = []
  readonly ways: OsmWay[] = []
  readonly relations: OsmRelation[] = []

  addNode(spot: Spot, tags?: Tags): number {
    const id = this.nodes.length + 1
    this.nodes.push({ id, ...pointFromSpot(spot), ...(tags ? { tags } : {}) })
    return id
  }

  tagNode(id: number, tags: Tags): void {
    const node = this.nodes[id - 1]!
    node.tags = { ...node.tags, ...tags }
  }

  addWay(nodeIds: readonly number[], tags: Tags): number {
    const id = this.ways.length + 1
    this.ways.push({ id, nodeIds, tags })
    return id
  }

  addRing(ring: Ring, tags: Tags): number {
    const ids = ring.map((spot) => this.addNode(spot))
    return this.addWay([...ids, ids[0]!], tags)
  }

  /** One closed way, or a multipolygon where there are holes. */
  addArea({ outer, holes }: Area, tags: Tags): void {
    if (holes.length === 0) {
      this.addRing(outer, tags)
      return
    }
    const members: OsmMember[] = [{ type: 'way', ref: this.addRing(outer, {}), role: 'outer' }]
    for (const hole of holes) members.push({ type: 'way', ref: this.addRing(hole, {}), role: 'inner' })
    this.addRelation(members, { type: 'multipolygon', ...tags })
  }

  addRelation(members: readonly OsmMember[], tags: Tags): void {
    this.relations.push({ id: this.relations.length + 1, members, tags })
  }
}
