import type { Bounds } from '../geo'
import type { Issue } from '../issue'

/** The kinds of file that can be read. */
export type OsmFileKind = 'pbf' | 'xml' | 'overpass-json'

/** Tags of one element; only keys that matter to roads, water and the drawn map are kept. */
export type Tags = Readonly<Record<string, string>>

/** Index of a node that a way names but the file does not hold. */
export const MISSING_NODE = 0xffffffff

/** Degrees are held as whole ten-millionths, the resolution of the data itself, so every file kind gives equal numbers. */
export const DEGREES_E7 = 1e7

/** What one element of a relation is and does. */
export type OsmMember = { readonly kind: 'node' | 'way' | 'relation'; readonly id: number; readonly role: string }

export type OsmRelation = { readonly id: number; readonly tags: Tags; readonly members: readonly OsmMember[] }

/** What was met in the file, before anything was left out. */
export type OsmCounts = {
  nodeCount: number
  wayCount: number
  relationCount: number
  highwayCount: number
  restrictionCount: number
}

/**
 * A district's map data as plain tables. Nodes and ways are sorted by id, without
 * duplicates, so the order of the file changes nothing.
 */
export type OsmExtract = {
  readonly kind: OsmFileKind
  /** Node ids, ascending. */
  readonly nodeId: Float64Array
  readonly nodeLatE7: Int32Array
  readonly nodeLonE7: Int32Array
  /** Indexes of the nodes that carry tags that matter, ascending, and those tags. */
  readonly taggedNode: Uint32Array
  readonly nodeTags: readonly Tags[]
  /** Way ids, ascending. */
  readonly wayId: Float64Array
  readonly wayTags: readonly Tags[]
  /** Way w runs through `wayNode[wayStart[w]]` … `wayNode[wayStart[w + 1] − 1]`, node indexes or MISSING_NODE. */
  readonly wayStart: Uint32Array
  readonly wayNode: Uint32Array
  /** Turn restrictions and areas made of several ways, by id. */
  readonly relations: readonly OsmRelation[]
  /** Bounds stated by the file, else those of its nodes. */
  readonly bounds: Bounds
  /** Date and time of the data as the file states it, ISO 8601. */
  readonly dataDate?: string
  readonly counts: Readonly<OsmCounts>
  /** What was odd but did not stop the reading. */
  readonly issues: readonly Issue[]
}
