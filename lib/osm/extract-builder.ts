import { findBounds, type Bounds } from '../geo'
import { issue, type Issue } from '../issue'
import { growingFloat64, growingInt32, growingUint32 } from './growing-array'
import { isNodeOfNote, isRelationOfNote, isRestriction, isWayOfNote } from './kept-tags'
import { nodeIndexFromId, sortedOnce } from './sorted-ids'
import { DEGREES_E7, MISSING_NODE, type OsmCounts, type OsmExtract, type OsmFileKind, type OsmMember, type OsmRelation, type Tags } from './osm-extract'
import { osmFault } from './osm-fault'
import type { OsmLimits } from './osm-limits'

const noTags: Tags = {}

/**
 * Takes elements in any order, from any file kind, and makes the sorted tables of an
 * extract. Ways without tags of note wait until the relations are known: they may be the
 * shore of a lake.
 */
export class ExtractBuilder {
  private readonly nodeId = growingFloat64()
  private readonly latE7 = growingInt32()
  private readonly lonE7 = growingInt32()
  private readonly notedNode = growingUint32()
  private readonly notedTags: Tags[] = []
  private readonly wayId = growingFloat64()
  private readonly wayTags: Tags[] = []
  private readonly wayStart = growingUint32()
  private readonly wayNode = growingFloat64()
  private readonly relations: OsmRelation[] = []
  private badNodeCount = 0
  private bounds: Bounds | undefined
  dataDate: string | undefined
  readonly counts: OsmCounts = { nodeCount: 0, wayCount: 0, relationCount: 0, highwayCount: 0, restrictionCount: 0 }

  constructor(
    private readonly kind: OsmFileKind,
    private readonly limits: OsmLimits,
  ) {
    this.wayStart.push(0)
  }

  addNode(id: number, latE7: number, lonE7: number, tags: Tags = noTags): void {
    if (++this.counts.nodeCount > this.limits.maxNodes) throw osmFault('osm-too-big', { what: 'nodes', allowedCount: this.limits.maxNodes })
    if (!Number.isSafeInteger(id) || !(Math.abs(latE7) <= 90 * DEGREES_E7) || !(Math.abs(lonE7) <= 180 * DEGREES_E7)) {
      this.badNodeCount++
      return
    }
    if (tags !== noTags && isNodeOfNote(tags)) {
      this.notedNode.push(this.nodeId.length)
      this.notedTags.push(tags)
    }
    this.nodeId.push(id)
    this.latE7.push(latE7)
    this.lonE7.push(lonE7)
  }

  /** @param nodeIds called back for the ids, so no array is made a way */
  addWay(id: number, nodeIds: Iterable<number>, tags: Tags): void {
    if (++this.counts.wayCount > this.limits.maxWays) throw osmFault('osm-too-big', { what: 'ways', allowedCount: this.limits.maxWays })
    if (tags['highway'] !== undefined) this.counts.highwayCount++
    this.wayId.push(id)
    this.wayTags.push(tags)
    for (const nodeId of nodeIds) this.wayNode.push(nodeId)
    this.wayStart.push(this.wayNode.length)
    if (this.wayNode.length > this.limits.maxWayNodes) {
      throw osmFault('osm-too-big', { what: 'way nodes', allowedCount: this.limits.maxWayNodes })
    }
  }

  addRelation(id: number, members: readonly OsmMember[], tags: Tags): void {
    if (++this.counts.relationCount > this.limits.maxRelations) {
      throw osmFault('osm-too-big', { what: 'relations', allowedCount: this.limits.maxRelations })
    }
    if (isRestriction(tags)) this.counts.restrictionCount++
    if (isRelationOfNote(tags)) this.relations.push({ id, tags, members })
  }

  /** Bounds the file states; several are joined. */
  addBounds(bounds: Bounds): void {
    if (!(bounds.south >= -90 && bounds.north <= 90 && bounds.west >= -180 && bounds.east <= 180)) return
    if (!(bounds.south <= bounds.north && bounds.west <= bounds.east)) return
    const corners = [{ lat: bounds.south, lon: bounds.west }, { lat: bounds.north, lon: bounds.east }]
    if (this.bounds) corners.push({ lat: this.bounds.south, lon: this.bounds.west }, { lat: this.bounds.north, lon: this.bounds.east })
    this.bounds = findBounds(corners)
  }

  /** Adds nodes that a way brought with it, where the file gives the shape instead of node elements. */
  finish(): OsmExtract {
    const issues: Issue[] = []
    if (this.badNodeCount > 0) issues.push(issue('osm-bad-nodes', 'warn', [], { nodeCount: this.badNodeCount }))

    const nodes = sortedOnce(this.nodeId.toArray())
    const latE7 = this.latE7.toArray()
    const lonE7 = this.lonE7.toArray()
    const nodeLatE7 = Int32Array.from(nodes.order, (at) => latE7[at] ?? 0)
    const nodeLonE7 = Int32Array.from(nodes.order, (at) => lonE7[at] ?? 0)
    const { taggedNode, nodeTags } = this.placeNodeTags(nodes.ids)

    const ways = sortedOnce(this.wayId.toArray())
    const wanted = this.wantedWays()
    const fileStart = this.wayStart.toArray()
    const fileNode = this.wayNode.toArray()
    const kept = [...ways.order].filter((at) => isWayOfNote(this.wayTags[at] ?? noTags) || wanted.has(ways.fileIds[at] ?? 0))
    const wayStart = new Uint32Array(kept.length + 1)
    const wayNode = growingUint32()
    let missingCount = 0
    let shortRoadCount = 0
    kept.forEach((at, way) => {
      let known = 0
      for (let i = fileStart[at] ?? 0; i < (fileStart[at + 1] ?? 0); i++) {
        const index = nodeIndexFromId(nodes.ids, fileNode[i] ?? NaN)
        if (index === MISSING_NODE) missingCount++
        else known++
        wayNode.push(index)
      }
      if (known < 2 && this.wayTags[at]?.['highway'] !== undefined) shortRoadCount++
      wayStart[way + 1] = wayNode.length
    })
    const duplicateCount = ways.duplicateCount + nodes.duplicateCount
    if (duplicateCount > 0) issues.push(issue('osm-duplicates', 'note', [], { elementCount: duplicateCount }))
    if (missingCount > 0) issues.push(issue('osm-missing-nodes', 'note', [], { nodeCount: missingCount, cutRoadCount: shortRoadCount }))
    if (this.counts.highwayCount - shortRoadCount <= 0) {
      throw osmFault('osm-no-roads', { kind: this.kind, nodeCount: this.counts.nodeCount, wayCount: this.counts.wayCount })
    }
    return {
      kind: this.kind,
      nodeId: nodes.ids, nodeLatE7, nodeLonE7, taggedNode, nodeTags,
      wayId: Float64Array.from(kept, (at) => ways.fileIds[at] ?? 0),
      wayTags: kept.map((at) => this.wayTags[at] ?? noTags),
      wayStart, wayNode: wayNode.toArray(),
      relations: [...new Map(this.relations.map((relation) => [relation.id, relation])).values()].sort((a, b) => a.id - b.id),
      bounds: this.bounds ?? boundsOf(nodeLatE7, nodeLonE7),
      ...(this.dataDate === undefined ? {} : { dataDate: this.dataDate }),
      counts: this.counts,
      issues,
    }
  }

  private placeNodeTags(ids: Float64Array): { taggedNode: Uint32Array; nodeTags: Tags[] } {
    const fileIds = this.nodeId.toArray()
    const byIndex = new Map<number, Tags>()
    const noted = this.notedNode.toArray()
    noted.forEach((at, i) => byIndex.set(nodeIndexFromId(ids, fileIds[at] ?? NaN), this.notedTags[i] ?? noTags))
    const taggedNode = Uint32Array.from(byIndex.keys()).sort()
    return { taggedNode, nodeTags: Array.from(taggedNode, (index) => byIndex.get(index) ?? noTags) }
  }

  /** Ways that a relation of note needs. */
  private wantedWays(): Set<number> {
    const wanted = new Set<number>()
    for (const { tags, members } of this.relations) {
      if (isRestriction(tags)) continue
      for (const member of members) if (member.kind === 'way') wanted.add(member.id)
    }
    return wanted
  }
}

function boundsOf(latE7: Int32Array, lonE7: Int32Array): Bounds {
  let south = 90 * DEGREES_E7, north = -90 * DEGREES_E7, west = 180 * DEGREES_E7, east = -180 * DEGREES_E7
  for (let i = 0; i < latE7.length; i++) {
    const lat = latE7[i] ?? 0, lon = lonE7[i] ?? 0
    if (lat < south) south = lat
    if (lat > north) north = lat
    if (lon < west) west = lon
    if (lon > east) east = lon
  }
  return { south: south / DEGREES_E7, west: west / DEGREES_E7, north: north / DEGREES_E7, east: east / DEGREES_E7 }
}
