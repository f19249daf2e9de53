/** Where somebody stands who keeps a log. A draft post is the pumper that draws the water of a fill site. */
export const postKinds = ['fill', 'dump', 'attack', 'draft'] as const
export type PostKind = (typeof postKinds)[number]

/**
 * What can be seen at a post. `tankLevel` is the water in the portable tanks [gal], `flow` [gpm], `pressure` of the gauge
 * [psi]; `full`, `left` and `empty` may say how much water the tender has in it then [gal].
 */
export const siteEventKinds = ['arrived', 'hookedUp', 'filling', 'full', 'left', 'dumping', 'empty', 'tankLevel', 'flow', 'pressure', 'primeGot', 'note'] as const
export type SiteEventKind = (typeof siteEventKinds)[number]

/** What a kind's value may be; a kind that is not here has none. */
export const siteEventValues: Readonly<Partial<Record<SiteEventKind, { unit: 'gal' | 'gpm' | 'psi'; low: number; high: number; isNeeded: boolean }>>> = {
  tankLevel: { unit: 'gal', low: 0, high: 200_000, isNeeded: true },
  flow: { unit: 'gpm', low: 0, high: 20_000, isNeeded: true },
  pressure: { unit: 'psi', low: -15, high: 600, isNeeded: true },
  full: { unit: 'gal', low: 0, high: 20_000, isNeeded: false },
  left: { unit: 'gal', low: 0, high: 20_000, isNeeded: false },
  empty: { unit: 'gal', low: 0, high: 20_000, isNeeded: false },
}
