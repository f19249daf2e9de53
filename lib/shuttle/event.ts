/** What can happen in a run, in the words of the log. The number of a kind is its place here. */
export const eventKinds = [
  'fill-open', 'dump-open', 'demand', 'engine-arrives', 'engine-empty', 'first-water',
  'arrives-at-dump', 'takes-position', 'starts-dump', 'ends-dump', 'leaves-dump', 'withdraws',
  'arrives-at-fill', 'takes-bay', 'starts-fill', 'tops-up', 'ends-fill', 'leaves-fill',
  'pumper-set', 'supply-ready', 'all-supply-ready', 'tank-full', 'tank-takes-all',
  'draft-lost', 'reprime', 'draft-back', 'booster-empty', 'source-empty', 'source-recovers', 'flow',
] as const
export type EventKind = (typeof eventKinds)[number]

type KindNumbers = { readonly [K in EventKind]: number }
const numbers: Partial<Record<EventKind, number>> = {}
eventKinds.forEach((kind, i) => { numbers[kind] = i })

/** Number of each kind, as handed to an observer. */
export const EVENT = numbers as KindNumbers

/**
 * Called as events happen; gets numbers only, so that watching costs nothing when nobody does.
 *
 * @param kind   number of the kind, see `eventKinds`
 * @param time_s when
 * @param tender index of the tender, -1 when none is meant
 * @param site   index among dump sites for dump events, among fill sites for fill events, -1 when none is meant
 */
export type OnEvent = (kind: number, time_s: number, tender: number, site: number) => void
