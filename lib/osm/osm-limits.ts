/** How much a file may hold before it is refused: a district, not a country. */
export type OsmLimits = {
  /** Bytes of the file as given. */
  readonly maxFileBytes: number
  /** Bytes that a packed file may unpack to. */
  readonly maxUnpackedBytes: number
  readonly maxNodes: number
  readonly maxWays: number
  readonly maxRelations: number
  /** Nodes named by all ways together. */
  readonly maxWayNodes: number
}

/** About ten large counties; a browser tab holds this in well under 1 GB. */
export const defaultOsmLimits: OsmLimits = {
  maxFileBytes: 400_000_000,
  maxUnpackedBytes: 600_000_000,
  maxNodes: 8_000_000,
  maxWays: 1_500_000,
  maxRelations: 200_000,
  maxWayNodes: 12_000_000,
}
