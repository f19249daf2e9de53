/** How much a file of places may hold before it is refused: a county's records, not a nation's. */
export const exchangeLimits = {
  maxFileBytes: 50_000_000,
  maxUnpackedBytes: 100_000_000,
  maxFeatures: 10_000,
  /** Points of all lines and areas together. */
  maxPoints: 500_000,
  maxColumns: 400,
  /** Elements within each other. */
  maxDepth: 60,
  /** Places taken in at once: each is an edit of its own. */
  maxTaken: 1000,
} as const
