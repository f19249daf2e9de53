/** What can happen in a run, in the words of the log. The number of a kind is its place here. */
export const eventKinds = [
  'fill-open', 'dump-open', 'demand', 'engine-arrives', 'engine-empty', 'first-water',
  'arrives-at-dump', 'takes-position', 'starts-dump', 'ends-dump', 'leaves-dump', 'withdraws',
  'arrives-at-fill', 'takes-bay', 'starts-fill', 'tops-up', 'ends-fill', 'leaves-fill',
  'pumper-set', 'supply-ready', 'all-supply-ready', 'tank-full', 'tank-takes-all',
  'draft-lost', 'reprime', 'draft-back', 'booster-empty', 'source-empty', 'source-recovers', 'flow',
  'bay-opens', 'position-opens', 'waits-in-bay', 'waits-at-road', 'enters-one-lane', 'leaves-one-lane', 'rests', 'ends-rest', 'lay-flow',
] as const
export type EventKind = (typeof eventKinds)[number]

/** Number of each kind, as handed to an observer. */
export const EVENT = {
  'fill-open': 0,
  'dump-open': 1,
  demand: 2,
  'engine-arrives': 3,
  'engine-empty': 4,
  'first-water': 5,
  'arrives-at-dump': 6,
  'takes-position': 7,
  'starts-dump': 8,
  'ends-dump': 9,
  'leaves-dump': 10,
  withdraws: 11,
  'arrives-at-fill': 12,
  'takes-bay': 13,
  'starts-fill': 14,
  'tops-up': 15,
  'ends-fill': 16,
  'leaves-fill': 17,
  'pumper-set': 18,
  'supply-ready': 19,
  'all-supply-ready': 20,
  'tank-full': 21,
  'tank-takes-all': 22,
  'draft-lost': 23,
  reprime: 24,
  'draft-back': 25,
  'booster-empty': 26,
  'source-empty': 27,
  'source-recovers': 28,
  flow: 29,
  'bay-opens': 30,
  'position-opens': 31,
  'waits-in-bay': 32,
  'waits-at-road': 33,
  'enters-one-lane': 34,
  'leaves-one-lane': 35,
  rests: 36,
  'ends-rest': 37,
  'lay-flow': 38,
} as const satisfies { readonly [K in EventKind]: number }

/**
 * Called as events happen; gets numbers only, so that watching costs nothing when nobody does.
 *
 * @param kind   number of the kind, see `eventKinds`
 * @param time_s when
 * @param tender index of the tender, -1 when none is meant
 * @param site   index among dump sites for dump events, among fill sites for fill events, among one-lane stretches
 *   for events on the road, among hose lays for `lay-flow`, -1 when none is meant
 */
export type OnEvent = (kind: number, time_s: number, tender: number, site: number) => void
